import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { packCircuit } from "../../electron/pack/pack.ts";
import { FILE_KINDS } from "../../electron/packaging/fileKinds.ts";
import { got, hostOn, ownFolder, value } from "./library.ts";
import { sample, sampleText } from "./sample.ts";

const CONTENTS: Readonly<Record<string, () => string | Uint8Array>> = {
  wirefathom: () => value(packCircuit(sample("Packed"), [])),
  "circuit.json": () => sampleText(),
};

it.each(FILE_KINDS.map(({ ending }) => ending))(
  "a file *.%s, of which systems are told, is taken up at start and from the desktop",
  async (ending) => {
    const folder = ownFolder();
    const path = join(folder, `one.${ending}`);
    writeFileSync(path, CONTENTS[ending]?.() ?? '{"text":"as it is"}');
    const host = hostOn(join(folder, "library"));
    host.requests.setStartFile(path);
    const { open, exercise, notices } = await got(host, "start", {});
    expect(notices).toEqual([]);
    if (open === null && exercise === null)
      expect((await got(host, "nextRequest", {})).request).toMatchObject({ name: `one.${ending}` });
    host.requests.add({ file: path });
    const { request } = await got(host, "nextRequest", {});
    const kind = /^(\w+)\.json$/.exec(ending)?.[1];
    expect(request).toMatchObject(ending in CONTENTS ? { ask: "open" } : { ask: kind, text: '{"text":"as it is"}' });
  },
);
