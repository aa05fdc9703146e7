import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import type { Circuit, Picture } from "../../core/circuit/circuit.ts";
import type { Job } from "../../core/diagnose/job.ts";
import type { Exercise } from "../../core/lesson/exercise.ts";
import type { Recorded } from "../../core/lesson/move.ts";
import type {
  AttemptRow,
  BesideRow,
  CircuitRow,
  JobRow,
  KeptAttempt,
  KeptMark,
  OpenedCircuit,
  VersionRow,
} from "../../schemas/calls.ts";
import type { Json } from "../../schemas/json.ts";
import type { Settings } from "../../schemas/settings.ts";
import type { PictureFile } from "./pictureFile.ts";

/**
 * The library, wherever it is kept. Each method is one transaction, kept for good when it resolves, and none at all where
 * it refuses. Every one refuses a `store-...` where the place it is kept in fails; a broken invariant rejects.
 */
export interface Library {
  readonly circuits: CircuitShelf;
  readonly versions: VersionShelf;
  readonly benches: BenchShelf;
  readonly jobs: JobShelf;
  readonly attempts: AttemptShelf;
  readonly marks: MarkShelf;
  readonly pictures: PictureShelf;
  readonly recent: RecentShelf;
  readonly settings: SettingShelf;
}

/** Which library it is, as a person is told. */
export interface LibraryPlace {
  readonly where: "here" | "server";
  /** Name of the database and its server; empty for one on this machine. */
  readonly name: string;
}

/** Opens the library when it is first needed, and keeps it open. */
export interface LibraryKeeper {
  /** Folder of this machine's own part of it. */
  readonly folder: string;
  readonly place: LibraryPlace;
  /** The open library; after a refusal the next asking tries again. */
  library(): Promise<Outcome<Library>>;
  /** Why nothing can be kept in it now, as where it is only looked at; null where it can. Absent where it always can. */
  whyNotKept?(): Promise<Refusal | null>;
  /** What the person must be told and was not told yet; told once. */
  takeNotices(): readonly Refusal[];
  /** Closes the library for good. It waits for what is under way. */
  close(): Promise<void>;
}

/** Rows of a list with how many there are in all. */
export interface Listed<Row> {
  readonly rows: Row[];
  readonly count: number;
}

/** What lies in the library, or in its bin. */
export type Where = "library" | "bin";

/** Which rows to list: those found by what was typed, `limit` at most, after the first `from`. */
export interface ListAsk {
  readonly search: string;
  readonly where: Where;
  readonly from: number;
  readonly limit: number;
}

/** How a circuit came into the library: the name of its first version, and what was on its bench. */
export interface Coming {
  readonly name: string;
  readonly bench?: string | null | undefined;
  readonly jobs?: readonly Job[] | undefined;
  /** Mark of the page that sends it: one whose answer was lost and that is sent once more is kept once. */
  readonly page?: string | undefined;
}

/** What stands on a circuit's bench, as a page sends it. */
export interface BenchSave {
  readonly bench: string;
  /** Version of the bench that it was made from; 0 for none. */
  readonly benchVersion: number;
  /** True where only the look at it differs, as page and zoom: that is no new version. */
  readonly isSight?: boolean | undefined;
}

/** One accepted edit. `version` is the one it was made on; the bench is left as it is where none is given. */
export interface Save {
  readonly version: number;
  readonly circuit: Circuit;
  readonly name: string;
  readonly bench?: BenchSave;
  readonly jobs?: readonly Job[];
  /** Mark of the page that sends it: a save whose answer was lost is told by it from another page's. */
  readonly page?: string | undefined;
}

/** The versions of a circuit and of what stands on its bench, as they are in the library now. */
export interface Standing {
  /** The circuit that it was kept in: not the one asked for where it was kept beside that. */
  readonly id: string;
  readonly version: number;
  readonly benchVersion: number;
  /** What had become of the circuit meanwhile, where this was kept beside it; null where it was kept as asked. */
  readonly beside: ChangedMeanwhile | null;
}

/** Who changed a circuit last, and when; and whether it is in the bin now. */
export interface ChangedMeanwhile {
  /** Name of another person; empty where it was the same one in another window, or where it is not known. */
  readonly by: string;
  readonly saved: string;
  readonly isRemoved: boolean;
}

/** A circuit as it stands now, for a page that has it open. */
export interface StandsNow extends ChangedMeanwhile {
  readonly version: number;
}

/** Circuits. All but lists refuse `circuit-unknown`; one in the bin is unknown unless it is to come back. */
export interface CircuitShelf {
  /** Newest edit first, or where something is searched the best match first. */
  list(asked: ListAsk): Promise<Outcome<Listed<CircuitRow>>>;
  /** Brings a circuit to the bench and notes it. Refuses `version-damaged`. */
  open(id: string, now: Date): Promise<Outcome<OpenedCircuit>>;
  /** The circuit as it is now. Refuses `version-damaged`. */
  read(id: string): Promise<Outcome<{ readonly circuit: Circuit; readonly version: number }>>;
  /** Takes in a new circuit and brings it to the bench. */
  create(circuit: Circuit, coming: Coming, now: Date): Promise<Outcome<OpenedCircuit>>;
  /**
   * Takes in a circuit from a file with the pictures that it shows, and brings it to the bench. A file that was brought in
   * before is not taken again: the circuit it became is opened, with what was done to it since.
   */
  bringIn(file: BroughtFile, now: Date): Promise<Outcome<OpenedCircuit>>;
  /**
   * Keeps an edit and gives the versions that stand now; a circuit that did not change keeps its own. Where another page
   * changed the circuit or its bench since, nothing of that is written over: the edit is kept beside it, as a circuit of
   * its own that is on the bench from then on.
   */
  save(id: string, save: Save, now: Date): Promise<Outcome<Standing>>;
  /** How a circuit stands now, in the bin or not. */
  standing(id: string): Promise<Outcome<StandsNow>>;
  /** Keeps a copy of a circuit with its bench, under the first title of a copy that is free. */
  duplicate(id: string, now: Date): Promise<Outcome<CircuitRow>>;
  rename(id: string, title: string, now: Date): Promise<Outcome<CircuitRow>>;
  /** Moves a circuit to the bin, or lets go of it for good. */
  remove(id: string, isForGood: boolean, now: Date): Promise<Outcome<CircuitRow>>;
  restore(id: string): Promise<Outcome<CircuitRow>>;
}

/** A circuit from a file, with the pictures that came with it. */
export interface BroughtFile {
  readonly circuit: Circuit;
  readonly pictures: readonly PictureFile[];
}

/** Versions of circuits; both refuse `circuit-unknown`. */
export interface VersionShelf {
  /** Newest first, with the circuits that were kept beside this one, or that it was kept beside. */
  list(id: string): Promise<Outcome<VersionsKept>>;
  /** Refuses `version-unknown`, `version-damaged`, and what reading a circuit file refuses. */
  read(id: string, version: number): Promise<Outcome<Circuit>>;
}

/** Versions of a circuit, newest first, and what was kept beside it because it was changed twice at once. */
export interface VersionsKept {
  readonly versions: VersionRow[];
  readonly besides: BesideRow[];
}

/** What stands on the benches of circuits that did not change. */
export interface BenchShelf {
  /**
   * Keeps a bench and its jobs, and gives the versions that stand now; beside, as `CircuitShelf.save`. Only a look is not
   * worth that: it is refused as `circuit-changed-elsewhere` or `bench-changed-elsewhere`.
   */
  save(id: string, save: BenchKept, now: Date): Promise<Outcome<Standing>>;
}

/** A bench to be kept; `version` is that of its circuit. */
export interface BenchKept extends BenchSave {
  readonly version: number;
  readonly jobs: readonly Job[];
  readonly page?: string | undefined;
}

/** Where a job is: the id of its circuit, and its own. */
export interface JobPlace {
  readonly circuit: string;
  readonly id: string;
}

/** Which jobs to list: of all circuits, or of one. */
export interface JobsAsk extends ListAsk {
  readonly circuit: string | null;
}

/** Jobs. All but the list refuse `job-unknown`. */
export interface JobShelf {
  /** Open ones first, newest first; where something is searched, the same among those found. */
  list(asked: JobsAsk): Promise<Outcome<Listed<JobRow>>>;
  /** Refuses `job-damaged`. */
  read(place: JobPlace): Promise<Outcome<Job>>;
  remove(place: JobPlace, now: Date): Promise<Outcome<JobRow>>;
  restore(place: JobPlace): Promise<Outcome<JobRow>>;
}

/** An exercise as it comes in: its id, its file as sealed as it is, and what that says openly. */
export interface TakenExercise {
  readonly id: string;
  readonly text: string;
  readonly exercise: Exercise;
}

/** Moves that go behind the first `from` of a route. */
export interface AddedMoves {
  readonly id: string;
  readonly from: number;
  readonly moves: readonly Recorded[];
  readonly learner: string;
}

/** Exercises that a learner works on. All but list and taking in refuse `attempt-unknown`. */
export interface AttemptShelf {
  /** Those under way first, newest first. */
  list(where: Where): Promise<Outcome<AttemptRow[]>>;
  /** Takes an exercise in by its id; one that is known keeps its route, and comes back out of the bin. */
  take(taken: TakenExercise, now: Date): Promise<Outcome<KeptAttempt>>;
  /** Brings it to the bench as it was kept last. Refuses `attempt-damaged`. */
  open(id: string): Promise<Outcome<KeptAttempt>>;
  /** Refuses `attempt-elsewhere` where another page was faster. */
  add(added: AddedMoves, now: Date): Promise<Outcome<Record<never, never>>>;
  /** Begins it anew: its route goes, whoever works on it stays. */
  restart(id: string, now: Date): Promise<Outcome<KeptAttempt>>;
  remove(id: string, now: Date): Promise<Outcome<AttemptRow>>;
  restore(id: string): Promise<Outcome<AttemptRow>>;
}

/** What learners showed. Each gives all marks, by learner and then in the order in which they were graded. */
export interface MarkShelf {
  list(): Promise<Outcome<KeptMark[]>>;
  /** A hand-in that is graded again takes the place of what it was. */
  keep(marks: readonly KeptMark[], now: Date): Promise<Outcome<KeptMark[]>>;
  forget(learner: string): Promise<Outcome<KeptMark[]>>;
}

/** Pictures, each kept once under the hash of its bytes. */
export interface PictureShelf {
  /** Keeps a picture; a damaged one of the same hash is put right by it. */
  keep(file: PictureFile, now: Date): Promise<Outcome<Picture>>;
  /** Refuses `picture-unknown`, and `picture-changed` where its bytes changed on the disk. */
  read(sha256: string): Promise<Outcome<PictureFile>>;
}

/** What is on the bench, so that the next start brings it back; null where nothing is or it is in the bin. */
export interface OnBench {
  readonly circuit: string | null;
  readonly attempt: string | null;
}

/** What this person had open. */
export interface RecentShelf {
  /** Circuits outside the bin, opened last first. */
  list(limit: number): Promise<Outcome<CircuitRow[]>>;
  onBench(): Promise<Outcome<OnBench>>;
  /** Notes that nothing is on the bench. */
  clear(): Promise<Outcome<Record<never, never>>>;
}

/** What this person set, and what the host notes for itself. */
export interface SettingShelf {
  /** One that was never set, or that does not fit any more, is as at a first start. */
  read(): Promise<Outcome<Settings>>;
  /** Changes some, and gives all. */
  keep(changes: { readonly [N in keyof Settings]?: Settings[N] | undefined }): Promise<Outcome<Settings>>;
  /** Something the host noted for itself, such as the window's place; null where it did not. */
  note(name: string): Promise<Outcome<Json>>;
  keepNote(name: string, value: Json): Promise<Outcome<Record<never, never>>>;
}
