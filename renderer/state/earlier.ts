import { sentence } from "../../core/base/words.ts";
import { bringBack } from "../../core/edit/commands/bringBack.ts";
import type { VersionRow } from "../../schemas/calls.ts";
import { backWords } from "../circuit/versionWords.ts";
import type { Host } from "../host/host.ts";
import type { Command } from "./action.ts";
import type { AppStore } from "./store.ts";

/** Asks the host which versions of the circuit on the bench it keeps. One that is not stored yet has none. */
export async function versionsListed(host: Host, store: AppStore): Promise<void> {
  const { open } = store.getState();
  if (!open) return;
  if (open.id === null) return store.dispatch({ do: "versions-listed", rows: [], besides: [] });
  const answer = await host.ask("circuits.versions", { id: open.id });
  if (store.getState().open?.number !== open.number) return;
  if (answer.ok) store.dispatch({ do: "versions-listed", rows: answer.value.versions, besides: answer.value.besides });
  else store.dispatch({ do: "versions-troubled", words: sentence(answer.refusal) });
}

/** Brings a version back onto the bench as an edit that can be undone; what stood there stays a version of its own. */
export async function broughtBack(host: Host, store: AppStore, row: VersionRow): Promise<void> {
  const asked = store.getState().open;
  if (!asked || asked.id === null) return;
  const answer = await host.ask("circuits.version", { id: asked.id, version: row.version });
  const { open } = store.getState();
  if (!open || open.number !== asked.number) return;
  if (!answer.ok) {
    const words = sentence(answer.refusal);
    return store.dispatch({ do: "tell", notice: { title: "Not brought back.", words, isError: true } });
  }
  const command: Command = (bench) => bringBack(bench, answer.value.circuit, backWords(row));
  const edit = command(open.desk.bench);
  if (!edit.ok && edit.refusal.code === "already-so") {
    store.dispatch({ do: "tell", notice: { title: "Nothing differs.", words: SAME_WORDS, isError: false } });
  } else store.dispatch({ do: "make", command });
}

const SAME_WORDS = "The circuit on the bench is as it was in that version.";
