/**
 * The script that runs the built preload in a page: `require('electron')` gives it the three parts a
 * sandboxed preload has. There is no isolated world here, so the page and the preload share theirs.
 */
export function pageSideElectron(preload: string, dropped: Readonly<Record<string, string>>): string {
  return `(() => {
    const listeners = new Map();
    window.electronEmit = (channel, event) => listeners.get(channel)?.forEach(each => each({}, event));
    const electron = {
      contextBridge: { exposeInMainWorld: (name, api) => { window[name] = api; } },
      ipcRenderer: {
        invoke: (channel, given) => window.electronInvoke(channel, given),
        on: (channel, listener) => listeners.set(channel, [...(listeners.get(channel) ?? []), listener]),
      },
      webUtils: { getPathForFile: file => (${JSON.stringify(dropped)})[file.name] ?? '' },
    };
    const require = name => {
      if (name !== 'electron') throw new Error('a sandboxed preload cannot load ' + name);
      return electron;
    };
    const module = { exports: {} };
    ((exports) => { ${preload}
    })(module.exports);
  })();`;
}
