import { type FuseV1Config, FuseV1Options, FuseVersion } from "@electron/fuses";

/**
 * What is switched off and on in Electron's program itself, where no line of ours can be made to change it: it is no Node, takes
 * no wish from the surroundings, and runs nothing but the archive it was packed with. All are named, so that a new one of a later
 * Electron ends the packaging until it was thought about.
 */
export const FUSES = {
  version: FuseVersion.V1,
  strictlyRequireAllFuses: true,
  [FuseV1Options.RunAsNode]: false,
  [FuseV1Options.EnableCookieEncryption]: true,
  [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: false,
  [FuseV1Options.EnableNodeCliInspectArguments]: false,
  [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: true,
  [FuseV1Options.OnlyLoadAppFromAsar]: true,
  [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: false,
  [FuseV1Options.GrantFileProtocolExtraPrivileges]: false,
  [FuseV1Options.WasmTrapHandlers]: true,
} as const satisfies FuseV1Config;
