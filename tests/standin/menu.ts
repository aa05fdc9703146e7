/** An entry as the program describes it, and as it can be looked at and clicked. */
interface Entry {
  readonly label?: string;
  readonly submenu?: readonly Entry[] | Built;
  click?(): void;
}

interface Built {
  readonly items: readonly Entry[];
}

let shown: Built | null = null;

/** Menus, which nobody sees here. */
export const Menu = {
  buildFromTemplate: (entries: readonly Entry[]): Built => ({
    items: entries.map((entry) =>
      Array.isArray(entry.submenu) ? { ...entry, submenu: Menu.buildFromTemplate(entry.submenu) } : entry,
    ),
  }),
  setApplicationMenu: (menu: Built | null): void => {
    shown = menu;
  },
  getApplicationMenu: (): Built | null => shown,
};
