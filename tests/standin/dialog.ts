/** Dialogs that a person turns away. A story puts its own answers in their place, as it does in Electron itself. */
export const dialog = {
  showSaveDialog: async () => ({ canceled: true, filePath: "" }),
  showOpenDialog: async () => ({ canceled: true, filePaths: [] as readonly string[] }),
  showMessageBox: async (_window: unknown, { cancelId = 0 }: { readonly cancelId?: number }) => ({
    response: cancelId,
  }),
  showErrorBox: (title: string, content: string): void => {
    process.stderr.write(`${title}: ${content}\n`);
  },
};
