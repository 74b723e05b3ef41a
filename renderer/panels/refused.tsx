/** Why something was not done, beside where it was asked for. */
export function Refused({ message }: { readonly message: string | undefined }) {
  return (
    <p role="status" className={message === undefined ? "unseen" : "refused"}>
      {message}
    </p>
  );
}
