import type { Position } from "../../core/parts/kind.ts";
import type { Brought } from "./feeding.ts";
import { groupsOf } from "./joining.ts";

/** What a group of joined terminals does, told by what the circuit brings to them. */
interface Told {
  readonly fed: readonly string[];
  readonly home: readonly string[];
  readonly others: readonly string[];
}

/** One position in words, told from the terminals it joins: "6 feeds 5, 4 goes home by 1"; `order` is that of the columns. */
export function readsAs(joins: Position["joins"], order: readonly string[], brought: Brought): string {
  const told = groupsOf(joins, order).map((group): Told => {
    const those = (what: string | undefined) => group.filter((terminal) => brought.get(terminal) === what);
    return { fed: those("feed"), home: those("home"), others: those(undefined) };
  });
  if (told.length === 0) return "nothing joined";
  const feeding = told.filter(({ fed, others }) => fed.length > 0 && others.length > 0).sort(byCount);
  const going = told.filter(({ fed, home, others }) => fed.length === 0 && home.length > 0 && others.length > 0);
  const rest = told.filter((each) => !feeding.includes(each) && !going.includes(each));
  return [...feeding.map(feedWords), ...homeWords(going), ...rest.map(joinedWords)].join(", ");
}

/** What is only fed comes before what is fed and grounded. */
function byCount(one: Told, other: Told): number {
  return one.home.length - other.home.length;
}

function feedWords({ fed, home, others }: Told): string {
  const verb = fed.length === 1 ? "feeds" : "feed";
  const short = home.length === 0 ? "" : `, and ${listed(home)} too, straight to ground`;
  return `${listed(fed)} ${verb} ${listed(others)}${short}`;
}

/** Two that each go home by a terminal of their own are told together. */
function homeWords(going: readonly Told[]): readonly string[] {
  const [one, other] = going;
  const isPair = one && other && going.every(({ home, others }) => home.length === 1 && others.length === 1);
  if (isPair && going.length === 2)
    return [`${one.others[0]} and ${other.others[0]} both go home, by ${one.home[0]} and ${other.home[0]}`];
  return going.map(({ home, others }) => {
    const verb = others.length === 1 ? "goes" : "go";
    return `${listed(others)} ${verb} home by ${listed(home)}`;
  });
}

function joinedWords({ fed, home, others }: Told): string {
  const all = `${listed([...fed, ...home, ...others])} joined`;
  return fed.length > 0 && home.length > 0 ? `${all}, feed to ground` : all;
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join() : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
