import { StartPage } from "./panels/start/start-page.tsx";
import BoxPicture from "./sheet/box-picture.tsx";

/** The start page with what draws its box. Fetched where no drawing is opened at once. */
export default function StartView() {
  return <StartPage picture={BoxPicture} />;
}
