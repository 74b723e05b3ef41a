import { useEffect } from "react";
import { files } from "../state/files.ts";

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
  if (event.dataTransfer !== null) void files.openDropped(event.dataTransfer);
}
