/** The compiled preload, with its own `require`, in front of the page's script. What crosses is cloned as Electron does. */
export const asPageScript = (preload: string): string => `(() => {
  const listeners = new Map();
  const electron = {
    contextBridge: { exposeInMainWorld(name, value) { Object.defineProperty(globalThis, name, { value }); } },
    ipcRenderer: {
      invoke: (channel, ...args) => globalThis.__invoke(channel, structuredClone(args)),
      on: (channel, listener) => void listeners.set(channel, [...(listeners.get(channel) ?? []), listener]),
      removeAllListeners: (channel) => void listeners.delete(channel),
    },
    webUtils: { getPathForFile: (file) => globalThis.__paths?.[file.name] ?? "" },
  };
  globalThis.__deliver = (channel, args) => {
    for (const listener of listeners.get(channel) ?? []) listener({ sender: electron }, ...structuredClone(args));
  };
  const require = (name) => {
    if (name !== "electron") throw new Error("A sandboxed preload has no " + name + ".");
    return electron;
  };
  ((require, module, exports) => {${preload}\n})(require, { exports: {} }, {});
})();`;
