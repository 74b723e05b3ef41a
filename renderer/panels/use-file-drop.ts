import { useEffect } from "react";
import { files } from "../state/files.ts";
import { attachToSelected, picturesAmong } from "../state/photos/photos.ts";

/** A drawing that is dropped anywhere on the window opens; what comes from the stock is left to the sheet. */
export function useFileDrop(): void {
  useEffect(() => {
    addEventListener("dragover", allowFiles);
    addEventListener("drop", openFile);
    return () => {
      removeEventListener("dragover", allowFiles);
      removeEventListener("drop", openFile);
    };
  }, []);
}

const holdsFiles = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes("Files") === true;

function allowFiles(event: DragEvent): void {
  if (holdsFiles(event)) event.preventDefault();
}

function openFile(event: DragEvent): void {
  if (!holdsFiles(event)) return;
  // Without this the browser would leave the window for the file.
  event.preventDefault();
  if (event.dataTransfer === null) return;
  const pictures = picturesAmong(event.dataTransfer.files);
  if (pictures.length > 0) void attachToSelected(pictures);
  else void files.openDropped(event.dataTransfer);
}
