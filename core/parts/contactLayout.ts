import type { GridUnits } from "../base/units.ts";
import { type Arm, type Arms, armsOf, type Row, type Throw } from "./contactArms.ts";
import type { ContactGroup } from "./contacts.ts";

/** From the outline to the first ring where no bus lies between: room for the terminal's name. */
const LEAD: GridUnits = 2.4;
const NAME_ROOM: GridUnits = 2.1;
const BUS_PITCH: GridUnits = 0.9;
const BLADE: GridUnits = 5;
/** Least distance of two terminals of a row, and of the two rings of one terminal that neighbours share. */
const PITCH: GridUnits = 4;
const SHARED_PITCH: GridUnits = 3;
const BETWEEN_CONTROLS: GridUnits = 5;
const RISER: GridUnits = 1.2;
const LABEL_ROOM: GridUnits = 1.5;
const LETTER: GridUnits = 0.62;
/** From the label's baseline to the outline, with a terminal name between. */
const NAME_LINE: GridUnits = 2;

/** An arm with its pivot and throws in place. */
export interface PlacedArm extends Arm {
  readonly footX: GridUnits;
  readonly throws: readonly (Throw & { readonly x: GridUnits })[];
}

/** All rings of one terminal in one row, and how they are joined: `level` counts buses outwards, null is a plain lead. */
export interface RowNet {
  readonly terminal: string;
  readonly rings: readonly GridUnits[];
  /** Where the terminal leaves the outline; null where it stands in the other row. */
  readonly stands: GridUnits | null;
  /** A lead between the rows, for a terminal with rings in both. */
  readonly riser: GridUnits | null;
  readonly level: number | null;
}

/** One control's arms, and where its label stands. */
export interface PlacedGroup {
  readonly label: string;
  readonly labelX: GridUnits;
  readonly arms: readonly PlacedArm[];
}

/** The field of contacts: rings of the top row at `topY`, pivots at `footY`, the outline from 0 to `height`. */
export interface ContactLayout {
  readonly groups: readonly PlacedGroup[];
  readonly rows: Readonly<Record<Row, readonly RowNet[]>>;
  readonly topY: GridUnits;
  readonly footY: GridUnits;
  readonly labelY: GridUnits;
  /** Baseline of the names at the foot. */
  readonly nameY: GridUnits;
  /** Right edge of the field, a whole number. */
  readonly width: GridUnits;
  readonly height: GridUnits;
}

/** What the symbol asks for: room at the left, room under the feet for a name, and whether controls carry labels. */
export interface FieldOptions {
  readonly left: GridUnits;
  readonly under: GridUnits;
  readonly labels: boolean;
  /** Terminals that stand at the foot whatever the table says. */
  readonly feet?: readonly string[];
}

/** Lays out the contacts of a part. Every terminal gets a whole x; those that no contact touches stand at the right. */
export function layOut(
  groups: readonly ContactGroup[],
  terminals: readonly string[],
  options: FieldOptions,
): ContactLayout {
  const arms = armsOf(groups, options.feet);
  const field = new Field(terminals, arms, options);
  const placed = arms.groups.map((group, index) => field.place(group, groups[index]?.label ?? ""));
  const top = field.row("top");
  const foot = field.row("foot");
  const topY = ringDepth(top);
  const footY = topY + BLADE;
  const labelY = footY + LABEL_ROOM + (busCount(foot) > 0 ? 0.6 + busCount(foot) * BUS_PITCH : 0);
  const under = options.under + (options.labels ? LABEL_ROOM : 0);
  // A label under a bus needs a line of its own above the terminal names.
  const labelled = options.labels && busCount(foot) > 0 ? labelY + NAME_LINE : 0;
  const height = Math.ceil(Math.max(footY + ringDepth(foot) + under, labelled) - 1e-9);
  const nameY = options.under > 0 ? footY + 1 : height - 0.65;
  return { groups: placed, rows: { top, foot }, topY, footY, labelY, nameY, width: field.width(), height };
}

function busCount(row: readonly RowNet[]): number {
  return 1 + Math.max(-1, ...row.map(({ level }) => level ?? -1));
}

/** From the outline to the rings of a row. */
function ringDepth(row: readonly RowNet[]): GridUnits {
  const buses = busCount(row);
  return buses === 0 ? LEAD : NAME_ROOM + 1 + BUS_PITCH * (buses - 1);
}

/** Distance of a bus from its row's rings. */
export function busDistance(level: number): GridUnits {
  return 1 + BUS_PITCH * level;
}

interface Ring {
  readonly terminal: string;
  readonly row: Row;
  readonly x: GridUnits;
}

/** A run of neighbouring columns with one terminal at the top. */
interface Run {
  readonly terminal: string;
  readonly count: number;
  readonly pitch: GridUnits;
}

class Field {
  private readonly rings: Ring[] = [];
  /** Where each terminal of the top row stands: the middle of its first run. */
  private readonly middles = new Map<string, GridUnits>();
  private readonly risers = new Map<string, GridUnits>();
  private readonly terminals: readonly string[];
  private readonly homes: ReadonlyMap<string, Row>;
  private readonly options: FieldOptions;
  private readonly pitch: GridUnits;
  /** Right end of what is placed, and the middle of the last run. */
  private right: GridUnits;
  private lastMiddle = Number.NEGATIVE_INFINITY;

  constructor(terminals: readonly string[], { homes }: Arms, options: FieldOptions) {
    this.terminals = terminals;
    this.homes = homes;
    this.options = options;
    const longest = Math.max(...terminals.map((name) => name.length));
    this.pitch = Math.max(PITCH, 2 * Math.ceil((longest * LETTER + 1) / 2));
    this.right = options.left - this.pitch + 0.5;
  }

  place(arms: readonly Arm[], label: string): PlacedGroup {
    if (this.rings.length > 0) this.right += BETWEEN_CONTROLS - PITCH;
    this.raise(arms);
    const columns = this.columns(arms);
    let next = 0;
    const placed = arms.map((arm) => {
      const throws = arm.throws.map((each) => ({ ...each, x: columns[next++]! }));
      return { ...arm, throws, footX: footOf(throws, arm.rest) };
    });
    for (const { foot, footX, throws } of placed) {
      this.rings.push({ terminal: foot, row: "foot", x: footX });
      for (const { terminal, x } of throws) this.rings.push({ terminal, row: "top", x });
    }
    return { label, labelX: this.labelX(placed, label), arms: placed };
  }

  /** Keeps a way at the left for each terminal that gets its first ring in the row where it does not stand. */
  private raise(arms: readonly Arm[]): void {
    for (const { foot, throws } of arms) {
      const away = throws.map(({ terminal }) => terminal).filter((terminal) => this.homes.get(terminal) !== "top");
      if (this.homes.get(foot) !== "foot") away.push(foot);
      for (const terminal of away) {
        if (this.risers.has(terminal)) continue;
        const x = this.right + this.pitch - 1;
        this.risers.set(terminal, x);
        this.right = x + RISER - this.pitch + 1;
      }
    }
  }

  /** The x of every column of a control; the middle of a run is whole, and a column with a pivot below it is whole. */
  private columns(arms: readonly Arm[]): readonly GridUnits[] {
    return this.runs(arms).flatMap(({ terminal, count, pitch }) => {
      const half = ((count - 1) * pitch) / 2;
      const least = Math.max(this.right + this.pitch - 0.5 + half, this.lastMiddle + this.pitch);
      const middle = Math.ceil(least - 1e-9);
      this.lastMiddle = middle;
      this.right = middle + half;
      if (!this.middles.has(terminal)) this.middles.set(terminal, middle);
      return Array.from({ length: count }, (_, index) => middle - half + index * pitch);
    });
  }

  private runs(arms: readonly Arm[]): readonly Run[] {
    const runs: Run[] = [];
    for (const arm of arms) {
      for (const { key, terminal } of arm.throws) {
        const bears = arm.throws.length === 1 || (arm.throws.length === 2 && arm.rest === key);
        const pitch = bears ? this.pitch : SHARED_PITCH;
        const last = runs.at(-1);
        if (last?.terminal !== terminal) runs.push({ terminal, count: 1, pitch });
        else runs.splice(-1, 1, { terminal, count: last.count + 1, pitch: Math.max(pitch, last.pitch) });
      }
    }
    return runs;
  }

  /** In the first gap between two feet that is wide enough, else at the right of the last foot. */
  private labelX(arms: readonly PlacedArm[], label: string): GridUnits {
    if (!this.options.labels || arms.length === 0) return 0;
    const room = label.length * LETTER + 1;
    const feet = arms.map(({ footX }) => footX).sort((one, other) => one - other);
    const at = feet.find((x, index) => index + 1 < feet.length && feet[index + 1]! - x >= room) ?? feet.at(-1)!;
    if (at === feet.at(-1)) this.right = Math.max(this.right, at + room - 1);
    return at + 0.6;
  }

  row(row: Row): readonly RowNet[] {
    const names = this.terminals.filter((terminal) =>
      this.rings.some((ring) => ring.terminal === terminal && ring.row === row),
    );
    return levelled([...names.map((terminal) => this.net(terminal, row)), ...(row === "top" ? this.idle() : [])]);
  }

  private net(terminal: string, row: Row): Omit<RowNet, "level"> {
    const rings = this.rings.filter((ring) => ring.terminal === terminal && ring.row === row).map(({ x }) => x);
    const isHome = this.homes.get(terminal) === row;
    const stands = row === "top" ? this.middles.get(terminal)! : rings[0]!;
    return { terminal, rings, stands: isHome ? stands : null, riser: this.risers.get(terminal) ?? null };
  }

  /** Terminals that no contact touches, as short leads at the right of the top row. */
  private idle(): readonly Omit<RowNet, "level">[] {
    const idle = this.terminals.filter((terminal) => !this.rings.some((ring) => ring.terminal === terminal));
    const first = Math.ceil(this.right + this.pitch - 0.5);
    return idle.map((terminal, index) => ({
      terminal,
      rings: [first + index * this.pitch],
      stands: first + index * this.pitch,
      riser: null,
    }));
  }

  width(): GridUnits {
    const idle = this.idle();
    const last = Math.max(this.right, ...idle.map(({ stands }) => stands!), ...this.rings.map(({ x }) => x));
    const names = this.terminals.map((terminal) => terminal.length * LETTER + 0.6);
    return Math.ceil(last + Math.max(2, ...names) - 1e-9);
  }
}

/** A pivot stands under the throw of rest of a change-over, and under the middle of any other arm. */
function footOf(throws: readonly { readonly key: string; readonly x: GridUnits }[], rest: string | null): GridUnits {
  if (throws.length === 1) return throws[0]!.x;
  const atRest = throws.find(({ key }) => key === rest);
  if (throws.length === 2 && atRest) return atRest.x;
  return Math.round((throws[0]!.x + throws.at(-1)!.x) / 2);
}

/** Gives each net that spans more than one x a bus; narrow ones lie nearest to the rings, and those apart share a level. */
function levelled(nets: readonly Omit<RowNet, "level">[]): readonly RowNet[] {
  const spanOf = (net: Omit<RowNet, "level">): readonly [GridUnits, GridUnits] => {
    const at = [...net.rings, ...(net.stands === null ? [] : [net.stands]), ...(net.riser === null ? [] : [net.riser])];
    return [Math.min(...at), Math.max(...at)];
  };
  const width = (net: Omit<RowNet, "level">): GridUnits => spanOf(net)[1] - spanOf(net)[0];
  const levels = new Map<string, number>();
  const taken: (readonly [number, GridUnits, GridUnits])[] = [];
  for (const net of [...nets].sort((one, other) => width(one) - width(other))) {
    const [from, to] = spanOf(net);
    if (to - from < 1e-9) continue;
    let level = 0;
    while (taken.some(([at, start, end]) => at === level && start < to + 1 && from < end + 1)) level++;
    taken.push([level, from, to]);
    levels.set(net.terminal, level);
  }
  return nets.map((net) => ({ ...net, level: levels.get(net.terminal) ?? null }));
}
