/** Runs before the window's own script and gives it the bridge: one function a channel, no logic, and no part of Electron. */
import { contextBridge, ipcRenderer, webUtils } from "electron";
import { channelOf, type EventName } from "../ipc/channels.ts";
import type { Bridge, EventOf } from "../ipc/contract.ts";

const bridge: Bridge = Object.freeze<Bridge>({
  chooseFile: () => ipcRenderer.invoke(channelOf("chooseFile")),
  takeWaitingFile: (request) => ipcRenderer.invoke(channelOf("takeWaitingFile"), request),
  openDropped: (file) => ipcRenderer.invoke(channelOf("openDropped"), { path: webUtils.getPathForFile(file) }),
  saveFile: (request) => ipcRenderer.invoke(channelOf("saveFile"), request),
  saveFileAs: (request) => ipcRenderer.invoke(channelOf("saveFileAs"), request),
  saveCopyAs: (request) => ipcRenderer.invoke(channelOf("saveCopyAs"), request),
  recentFiles: () => ipcRenderer.invoke(channelOf("recentFiles")),
  openRecent: (request) => ipcRenderer.invoke(channelOf("openRecent"), request),
  forgetRecent: (request) => ipcRenderer.invoke(channelOf("forgetRecent"), request),
  showDocument: (request) => ipcRenderer.invoke(channelOf("showDocument"), request),
  answerClose: (request) => ipcRenderer.invoke(channelOf("answerClose"), request),
  showKeys: (request) => ipcRenderer.invoke(channelOf("showKeys"), request),
  onRunCommand: (listener) => listen("runCommand", listener),
  onFileWaiting: (listener) => listen("fileWaiting", listener),
  onCloseRequested: (listener) => listen("closeRequested", listener),
});

/** Hands on what was said and not who said it: the event object would lead back to Electron. */
function listen<N extends EventName>(name: N, listener: (event: EventOf<N>) => void): void {
  ipcRenderer.removeAllListeners(channelOf(name));
  ipcRenderer.on(channelOf(name), (_, event: EventOf<N>) => listener(event));
}

contextBridge.exposeInMainWorld("loadside", bridge);
