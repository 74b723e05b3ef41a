import "../../ui/flag.css";
import "../scope/scope.css";
import "./preview.css";

export { default } from "./preview.tsx";
