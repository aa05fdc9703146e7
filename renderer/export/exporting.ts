import { type Outcome, ok } from "../../core/base/outcome.ts";
import { secondsOf } from "../../core/lesson/scene.ts";
import { conditionText } from "../../core/live/condition.ts";
import { faultText } from "../../core/live/fault.ts";
import { netListText, positionTableCsv, wireListCsv } from "../../core/paper/lists.ts";
import type { Argument } from "../../schemas/calls.ts";
import type { Settings } from "../../schemas/settings.ts";
import { base64Of } from "../host/base64.ts";
import type { Host } from "../host/host.ts";
import type { Open } from "../state/state.ts";
import { fileNameFor } from "../words/library.ts";
import type { ExportAsk } from "./exports.ts";

/** A file to hand on. */
export interface MadeFile {
  readonly name: string;
  readonly content: string;
  readonly encoding: "text" | "base64";
}

/** Makes what is asked for of what is open. Refuses as the host does. */
export async function fileFor(
  host: Host,
  { desk, page, tables }: Open,
  { look }: Pick<Settings, "look">,
  { what, palette }: ExportAsk,
): Promise<Outcome<MadeFile>> {
  const { circuit, condition, faults, showFaults } = desk.bench;
  const shown = { circuit, page, look, palette } as const;
  const now = { ...shown, condition: conditionText(condition), faults: showFaults ? faults.map(faultText) : [] };
  switch (what) {
    case "take-home": {
      const made = await host.ask("export.takeHome", { circuit });
      return made.ok ? ok({ name: made.value.name, content: made.value.html, encoding: "text" }) : made;
    }
    case "svg": {
      const made = await host.ask("export.svg", now);
      return made.ok ? ok({ name: made.value.name, content: made.value.svg, encoding: "text" }) : made;
    }
    case "png-2":
    case "png-4":
      return pictured(host, now, what === "png-2" ? 2 : 4);
    case "moving":
      return moved(
        host,
        circuit.scenes.map((scene) => ({
          seconds: secondsOf(scene),
          asked: { ...shown, condition: conditionText(scene.condition) },
        })),
        fileNameFor(circuit, "gif"),
      );
    case "table":
      return ok({
        name: fileNameFor(circuit, "csv"),
        content: positionTableCsv(tables.answer ?? []),
        encoding: "text",
      });
    case "wires":
      return ok({ name: fileNameFor(circuit, "csv"), content: wireListCsv(circuit), encoding: "text" });
    case "nets":
      return ok({ name: fileNameFor(circuit, "txt"), content: netListText(circuit), encoding: "text" });
  }
}

async function pictured(host: Host, asked: Argument<"export.svg">, times: number): Promise<Outcome<MadeFile>> {
  const made = await host.ask("export.svg", asked);
  if (!made.ok) return made;
  const { painted, pngOf } = await import("./raster.ts");
  const content = base64Of(await pngOf(await painted(made.value.svg, times)));
  return ok({ name: made.value.name.replace(/svg$/, "png"), content, encoding: "base64" });
}

interface SceneAsked {
  readonly seconds: number;
  readonly asked: Argument<"export.svg">;
}

async function moved(host: Host, scenes: readonly SceneAsked[], name: string): Promise<Outcome<MadeFile>> {
  const stills: { svg: string; seconds: number }[] = [];
  for (const { seconds, asked } of scenes) {
    const made = await host.ask("export.svg", asked);
    if (!made.ok) return made;
    stills.push({ svg: made.value.svg, seconds });
  }
  const { movingPicture } = await import("./moving.ts");
  return ok({ name, content: base64Of(await movingPicture(stills)), encoding: "base64" });
}
