import { Uri } from "vscode";

declare const PLACE: string;
declare const OPENS: "folder" | "file" | "nothing";

/** A folder that tests may use; where a folder is open in the window, it is this one. */
export const place = Uri.parse(PLACE);

/** Whether the window has folders at all. */
export const isOpen = OPENS !== "nothing";
