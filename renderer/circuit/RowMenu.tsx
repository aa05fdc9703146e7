import { useEffect, useRef } from "react";
import { Icon, type IconName } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";

/** Something that can be done with what a row shows. */
export interface RowAct {
  readonly icon: IconName;
  readonly words: string;
  readonly act: () => void;
  /** Why it cannot be done now; absent where it can. */
  readonly isOff?: string | undefined;
}

interface Shown {
  /** Whose menu it is, for those who do not see where it stands. */
  readonly label: string;
  readonly acts: readonly RowAct[];
}

/** The dots at the end of a row, and what can be done with it. */
export function RowMenu({ label, acts }: Shown) {
  return (
    <Popover label={label} className="icon-button is-small" place="below" button={<Icon name="more" size={16} />}>
      {(close) => <ActList acts={acts.map((each) => closing(each, close))} />}
    </Popover>
  );
}

/** What can be done, one below the other; the first of it has the focus at once. */
export function ActList({ acts }: { readonly acts: readonly RowAct[] }) {
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => {
    list.current?.querySelector<HTMLElement>("button:enabled")?.focus();
  }, []);
  return (
    <ul className="menu" ref={list}>
      {acts.map(({ icon, words, act, isOff }) => (
        <li key={words}>
          <button type="button" className="menu-item" disabled={isOff !== undefined} title={isOff} onClick={act}>
            <Icon name={icon} size={16} />
            {words}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** The same act, for which the menu is closed first: what it opens may want the focus. */
function closing({ act, ...shown }: RowAct, close: () => void): RowAct {
  return {
    ...shown,
    act: () => {
      close();
      act();
    },
  };
}
