import { closeNotice, sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { wording } from "./words.ts";

/** What has to be said once: at the top of the sheet, in the way of nothing. */
export function NoticeBar() {
  const notice = useStore(sessionStore, (state) => state.notice);
  return (
    <div role={notice?.kind === "problem" ? "alert" : "status"} className="notice-place">
      {notice && (
        <div className={`notice ${notice.kind}`}>
          <div className="notice-words">
            <strong>{notice.title}</strong>
            {notice.lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </div>
          <button type="button" className="button small" onClick={closeNotice}>
            {wording.close}
          </button>
        </div>
      )}
    </div>
  );
}
