/** The mark of the program, as on its icon: the line side of a device and its load side, from which the circuit goes on. */
export function Mark() {
  return (
    <svg width="24" height="24" viewBox="4 4 24 24" aria-hidden="true" fill="currentColor">
      <path d="M4 14H10V6H14V26H10V18H4Z" />
      <path d="M16 6H20V8H28V10H20V14H28V18H20V22H28V24H20V26H16Z" />
    </svg>
  );
}
