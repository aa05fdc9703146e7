import { describe, expect, test } from "vitest";
import type { Mark } from "../../core/drawing/mark.ts";
import { firstPart } from "../../core/edit/newPart.ts";
import { KINDS, kindOf } from "../../core/parts/catalogue.ts";
import type { Around, FaultEffect, Kind, Look, PartView, Pose, Sees } from "../../core/parts/kind.ts";
import { orderRefusal } from "../../core/parts/rising.ts";
import { viewOf } from "../../core/parts/view.ts";
import type { Law } from "../../core/solve/element.ts";
import { CASES } from "./sampleParts.ts";

const LOOKS: readonly Look[] = ["iec", "na"];
const NOTHING_SEEN: Sees = { volts: () => 0, amps: () => 0, terminalVolts: () => null };

function around(view: PartView, positions: Readonly<Record<string, string>> = {}): Around {
  const rest = Object.fromEntries(view.controls.map((control) => [control.name, control.positions[0]!.name]));
  return {
    positions: { ...rest, ...positions },
    drive: {},
    engineRunning: false,
    ambientC: 20,
    nominalVolts: view.nominalVolts,
  };
}

/** Every position of every control, the others at rest. */
function arounds(view: PartView): readonly Around[] {
  const thrown = view.controls.flatMap(({ name, positions }) =>
    positions.map((position) => around(view, { [name]: position.name })),
  );
  return [around(view), ...thrown];
}

function states(kind: Kind, view: PartView): readonly string[] {
  const held = effects(kind, view).flatMap((effect) => (effect.does === "hold" ? [effect.state] : []));
  return [...new Set([kind.start, ...held])];
}

function effects(kind: Kind, view: PartView): readonly FaultEffect[] {
  return kind.faults(view).flatMap((mode) => mode.effects(mode.value?.usual[0] ?? 0));
}

function poses(kind: Kind, view: PartView): readonly Pose[] {
  const rest = new Set(kind.closed(view, kind.start, around(view)));
  return states(kind, view).flatMap((state) =>
    arounds(view).map((at) => ({ closed: new Set(kind.closed(view, state, at)), rest, state })),
  );
}

function eachCase(check: (kind: Kind, view: PartView, where: string) => void): void {
  for (const { kind, part, nominalVolts } of CASES) {
    check(
      kind,
      viewOf(kind, part, nominalVolts),
      `${kind.name} ${JSON.stringify(part.settings ?? part.id)} ${nominalVolts} V`,
    );
  }
}

describe("the catalogue", () => {
  test("finds every kind by its name and no other", () => {
    for (const kind of KINDS) expect(kindOf(kind.name)).toBe(kind);
    expect(kindOf("no-such-kind")).toBeUndefined();
  });

  test("has no name and no title twice, and names of lower case and hyphens", () => {
    expect(new Set(KINDS.map(({ name }) => name)).size).toBe(KINDS.length);
    expect(new Set(KINDS.map(({ title }) => title)).size).toBe(KINDS.length);
    for (const { name, letter, title } of KINDS) {
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(letter, name).toMatch(/^[A-Z]{1,2}$/);
      expect(title, name).not.toBe("");
    }
  });
});

describe("settings", () => {
  test("of which one must be the smaller are numbers of the kind, and stand so as they are first drawn", () => {
    for (const kind of KINDS) {
      for (const name of (kind.rising ?? []).flat()) {
        expect(kind.settings.find((spec) => spec.name === name)?.value.type, `${kind.name} ${name}`).toBe("number");
      }
      for (const volts of [6, 12, 24]) {
        expect(orderRefusal(kind, firstPart(kind, "X1"), volts), `${kind.name} ${volts} V`).toBeNull();
      }
    }
  });

  test("have a default within their limits at 6, 12 and 24 V, and a source", () => {
    for (const kind of KINDS) {
      const names = kind.settings.map(({ name }) => name);
      expect(new Set(names).size, kind.name).toBe(names.length);
      for (const { name, label, source, unit, value } of kind.settings) {
        const where = `${kind.name} ${name}`;
        expect(label, where).not.toBe("");
        expect(source, where).not.toBe("");
        expect(["V", "A", "ohm", "W", "%", "degC", "rpm", ""], where).toContain(unit);
        if (value.type === "choice") expect(value.choices, where).toContain(value.usual);
        if (value.type !== "number") continue;
        for (const volts of [6, 12, 24]) {
          expect(value.usual(volts), where).toBeGreaterThanOrEqual(value.min);
          expect(value.usual(volts), where).toBeLessThanOrEqual(value.max);
        }
      }
    }
  });
});

function isSound(law: Law): boolean {
  switch (law.law) {
    case "joint":
      return true;
    case "resistor":
      return law.ohms > 0;
    case "source":
      return law.ohms > 0 && Number.isFinite(law.ohms) && Number.isFinite(law.volts);
    case "lamp":
      return law.ratedVolts > 0 && law.ratedAmps > 0;
    case "motor":
      return law.ohms > 0 && law.frictionAmps >= 0 && law.speedOhms >= 0;
    case "diode":
      return law.saturationAmps > 0 && law.emissionVolts > 0;
    case "regulated":
      return law.ohms > 0 && law.maxAmps > 0 && Number.isFinite(law.volts);
  }
}

describe("the model of every kind", () => {
  test("has terminals without repetition", () =>
    eachCase((_kind, view, where) => {
      expect(view.terminals.length, where).toBeGreaterThan(0);
      expect(new Set(view.terminals).size, where).toBe(view.terminals.length);
    }));

  test("has elements with keys of their own, ends that exist, and laws that can be solved", () =>
    eachCase((kind, view, where) => {
      const model = kind.model(view);
      expect(new Set(model.map(({ key }) => key)).size, where).toBe(model.length);
      for (const { a, b, key, law, passes } of model) {
        expect(isSound(law), `${where} ${key}`).toBe(true);
        expect(passes === "source", `${where} ${key}`).toBe(law.law === "source" || law.law === "regulated");
        for (const end of [a, b]) {
          expect(/^[~=]./.test(end) || view.terminals.includes(end), `${where} ${key} ${end}`).toBe(true);
        }
      }
    }));

  test("closes only contacts that it has, in every position and state", () =>
    eachCase((kind, view, where) => {
      const contacts = kind.model(view).flatMap(({ key, passes }) => (passes === "contact" ? [key] : []));
      for (const state of states(kind, view)) {
        for (const at of arounds(view)) {
          for (const key of kind.closed(view, state, at)) expect(contacts, where).toContain(key);
        }
      }
    }));

  test("stays in its state from the first or second look on, at rest with nothing seen", () =>
    eachCase((kind, view, where) => {
      const next = (state: string): string => kind.next(view, state, NOTHING_SEEN, around(view));
      for (const state of states(kind, view)) expect(next(next(state)), where).toBe(next(state));
    }));

  test("starts in a state that it does not leave at rest with nothing seen, but for an electronic flasher without supply", () =>
    eachCase((kind, view, where) => {
      if (kind.name === "flasher" && view.yes("electronic")) return;
      expect(kind.next(view, kind.start, NOTHING_SEEN, around(view)), where).toBe(kind.start);
    }));

  test("does nothing at rest with nothing seen", () =>
    eachCase((kind, view, where) => {
      const doing = kind.doing(view, kind.start, NOTHING_SEEN, around(view));
      expect(Math.abs(doing?.amps ?? 0), where).toBe(0);
      expect(Math.abs(doing?.work ?? 0), where).toBe(0);
    }));

  test("has controls with a rest position and names of their own", () =>
    eachCase((_kind, view, where) => {
      expect(new Set(view.controls.map(({ name }) => name)).size, where).toBe(view.controls.length);
      for (const { positions } of view.controls) {
        const names = positions.map(({ name }) => name);
        expect(names.length, where).toBeGreaterThan(0);
        expect(new Set(names).size, where).toBe(names.length);
        for (const { springsBackTo } of positions) if (springsBackTo) expect(names, where).toContain(springsBackTo);
      }
    }));
});

function nodes(kind: Kind, view: PartView): ReadonlySet<string> {
  return new Set([...view.terminals, "=return", "=feed", ...kind.model(view).flatMap(({ a, b }) => [a, b])]);
}

/** What an effect names that the kind does not have; "" where all is there. */
function missing(kind: Kind, view: PartView, effect: FaultEffect): string {
  const element = (key: string) => kind.model(view).find((candidate) => candidate.key === key);
  switch (effect.does) {
    case "open":
      return element(effect.element) ? "" : effect.element;
    case "add-ohms":
    case "set-ohms":
      return element(effect.element) && effect.ohms > 0 ? "" : effect.element;
    case "stick":
      return element(effect.element)?.passes === "contact" ? "" : effect.element;
    case "hold":
      return kind.start !== "" && effect.state !== "" ? "" : effect.state;
    case "stand": {
      const control = view.controls.find(({ name }) => name === effect.control);
      return control?.positions.some(({ name }) => name === effect.position) ? "" : effect.position;
    }
    case "bridge": {
      const known = nodes(kind, view);
      return known.has(effect.from) && known.has(effect.to) && effect.ohms > 0 ? "" : `${effect.from} ${effect.to}`;
    }
    case "set": {
      const setting = kind.settings.find(({ name }) => name === effect.setting);
      if (!setting) return effect.setting;
      const { value } = setting;
      if (value.type === "number") {
        const isWithin = typeof effect.value === "number" && effect.value >= value.min && effect.value <= value.max;
        return isWithin ? "" : `${effect.setting} ${effect.value}`;
      }
      return value.type !== "choice" || value.choices.includes(String(effect.value)) ? "" : String(effect.value);
    }
  }
}

describe("the faults of every kind", () => {
  test("have modes of their own that a command line can spell, a title, a repair and a weight", () =>
    eachCase((kind, view, where) => {
      const modes = kind.faults(view);
      expect(new Set(modes.map(({ mode }) => mode)).size, where).toBe(modes.length);
      for (const { mode, title, repair, weight } of modes) {
        expect(mode, where).toMatch(/^[^\s:=@,]+$/);
        expect(title, where).not.toBe("");
        expect(repair, where).not.toBe("");
        expect(weight, `${where} ${mode}`).toBeGreaterThan(0);
      }
    }));

  test("change only what the part has, for every usual value", () =>
    eachCase((kind, view, where) => {
      for (const mode of kind.faults(view)) {
        const values = mode.value?.usual ?? [0];
        expect(values.length, `${where} ${mode.mode}`).toBeGreaterThan(0);
        for (const value of values) {
          if (mode.value) {
            expect(value, `${where} ${mode.mode}`).toBeGreaterThanOrEqual(mode.value.min);
            expect(value, `${where} ${mode.mode}`).toBeLessThanOrEqual(mode.value.max);
          }
          expect(mode.effects(value).length, `${where} ${mode.mode}`).toBeGreaterThan(0);
          for (const effect of mode.effects(value))
            expect(missing(kind, view, effect), `${where} ${mode.mode}`).toBe("");
        }
      }
    }));

  test("leave a model that can be solved when they change a setting", () =>
    eachCase((kind, view, where) => {
      for (const effect of effects(kind, view)) {
        if (effect.does !== "set") continue;
        const faulty = viewOf(kind, view.part, view.nominalVolts, { [effect.setting]: effect.value });
        for (const { law } of kind.model(faulty)) expect(isSound(law), where).toBe(true);
      }
    }));
});

/** Left, top, right and bottom of a mark; type is measured elsewhere. */
function bounds(mark: Mark): readonly number[] {
  switch (mark.mark) {
    case "line": {
      const xs = mark.spots.map(({ x }) => x);
      const ys = mark.spots.map(({ y }) => y);
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    }
    case "circle":
    case "arc":
      return [mark.at.x - mark.radius, mark.at.y - mark.radius, mark.at.x + mark.radius, mark.at.y + mark.radius];
    case "box":
    case "swatch":
      return [mark.at.x, mark.at.y, mark.at.x + mark.width, mark.at.y + mark.height];
    case "text":
      return [mark.at.x, mark.at.y, mark.at.x, mark.at.y];
  }
}

describe("the symbol of every kind, in both looks and every pose", () => {
  test("has the part's terminals on whole grid points of its outline, facing outwards, no two on one point", () =>
    eachCase((kind, view, where) => {
      for (const look of LOOKS) {
        const { height, terminals, width } = kind.symbol(view, poses(kind, view)[0]!, look);
        expect(Object.keys(terminals).sort(), where).toEqual([...view.terminals].sort());
        expect(Number.isInteger(width) && Number.isInteger(height), where).toBe(true);
        for (const { side, x, y } of Object.values(terminals)) {
          expect(Number.isInteger(x) && Number.isInteger(y), where).toBe(true);
          const edge = { left: x === 0, right: x === width, up: y === 0, down: y === height }[side];
          expect(edge, `${where} ${side} ${x} ${y}`).toBe(true);
        }
        expect(new Set(Object.values(terminals).map(({ x, y }) => `${x} ${y}`)).size, where).toBe(
          view.terminals.length,
        );
      }
    }));

  test("keeps its outline and terminals whatever the pose and the look", () =>
    eachCase((kind, view, where) => {
      const shapes = LOOKS.flatMap((look) => poses(kind, view).map((pose) => kind.symbol(view, pose, look)));
      const outline = ({ height, terminals, width }: (typeof shapes)[number]) => ({ height, terminals, width });
      for (const shape of shapes) expect(outline(shape), where).toEqual(outline(shapes[0]!));
    }));

  test("draws marks of finite size that stay within one grid unit of the outline", () =>
    eachCase((kind, view, where) => {
      for (const look of LOOKS) {
        for (const pose of poses(kind, view)) {
          const { height, marks, nameAt, width } = kind.symbol(view, pose, look);
          expect(marks.length, where).toBeGreaterThan(0);
          expect(Number.isFinite(nameAt.x) && Number.isFinite(nameAt.y), where).toBe(true);
          for (const mark of marks) {
            const [left, top, right, bottom] = bounds(mark) as [number, number, number, number];
            expect([left, top, right, bottom].every(Number.isFinite), where).toBe(true);
            if (mark.mark === "text") continue;
            const isWithin = left >= -1 && top >= -1 && right <= width + 1 && bottom <= height + 1;
            expect(isWithin, `${where} ${look} ${JSON.stringify(mark)}`).toBe(true);
          }
        }
      }
    }));
});

test("every kind that is more than a name on a page has test points, at terminals of its own", () =>
  eachCase((kind, view, where) => {
    const points = kind.testPoints(view);
    if (kind.name !== "page-link") expect(points.length, where).toBeGreaterThan(0);
    for (const { terminal, touches } of points) {
      expect(view.terminals, where).toContain(terminal);
      expect(touches, where).not.toBe("");
    }
  }));
