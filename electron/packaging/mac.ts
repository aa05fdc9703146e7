import { FILE_KINDS } from "./fileKinds.ts";

const ID = "org.wirefathom";

/**
 * What macOS is told of the files that the program opens. It knows a kind of file by the last part of its name alone: the
 * circuit with its pictures is ours, and of all files that end in `.json` the program is one of those that can open them.
 */
export function infoPlist() {
  const own = FILE_KINDS.filter(({ ending }) => !ending.includes("."));
  return {
    CFBundleDocumentTypes: [
      ...own.map(({ ending, words }) => ({
        CFBundleTypeName: words,
        CFBundleTypeRole: "Editor",
        LSHandlerRank: "Owner",
        LSItemContentTypes: [`${ID}.${ending}`],
      })),
      {
        CFBundleTypeName: FILE_KINDS.filter(({ of }) => of === "application/json")
          .map(({ words }) => words)
          .join(", "),
        CFBundleTypeRole: "Editor",
        LSHandlerRank: "Alternate",
        LSItemContentTypes: ["public.json"],
      },
    ],
    UTExportedTypeDeclarations: own.map(({ ending, mime, words }) => ({
      UTTypeIdentifier: `${ID}.${ending}`,
      UTTypeDescription: words,
      UTTypeConformsTo: ["public.data", "public.archive"],
      UTTypeTagSpecification: { "public.filename-extension": [ending], "public.mime-type": [mime] },
    })),
  };
}
