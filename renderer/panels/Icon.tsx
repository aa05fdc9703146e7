/** Own icons on a box of 20, stroke 1.6, round ends. None is a triangle, ring, diamond, cross or question mark: those tell wire states. */
const PATHS = {
  undo: "M8 5 4 9l4 4M4 9h8a4 4 0 0 1 0 8H9",
  redo: "M12 5l4 4-4 4M16 9H8a4 4 0 0 0 0 8h3",
  find: "M9 15a6 6 0 1 0 0-12 6 6 0 0 0 0 12ZM13.5 13.5 17 17",
  light:
    "M10 13a3 3 0 1 0 0-6 3 3 0 0 0 0 6ZM10 2v2M10 16v2M2 10h2M16 10h2M4.5 4.5 6 6M14 14l1.5 1.5M15.5 4.5 14 6M6 14l-1.5 1.5",
  print: "M6 8V3h8v5M6 14H4a1 1 0 0 1-1-1V9a1 1 0 0 1 1-1h12a1 1 0 0 1 1 1v4a1 1 0 0 1-1 1h-2M6 12h8v5H6z",
  class: "M3 4h14v9H3zM10 13v4M6 17h8",
  more: "M4 10h.01M10 10h.01M16 10h.01",
  minutes: "M10 17a7 7 0 1 0 0-14 7 7 0 0 0 0 14ZM10 6v4l3 2",
  note: "M10 17a7 7 0 1 0 0-14 7 7 0 0 0 0 14ZM10 9v5M10 6.5v.01",
  springs: "M4 12a6 6 0 1 1 3 4M4 12l-1.5-3M4 12l3-1.5",
  pin: "M7 3h6M8 3v5l-2 3h8l-2-3V3M10 11v6",
  onward: "M7 5l5 5-5 5",
  down: "M5 8l5 5 5-5",
  up: "M5 12l5-5 5 5",
  back: "M13 5l-5 5 5 5",
  close: "M5 5l10 10M15 5 5 15",
  add: "M10 4v12M4 10h12",
  tick: "M4 10.5l4 4 8-9",
  loose: "M3 5h8M3 10h5M3 15h8M13 7l3 3-3 3",
  copy: "M7 7h9v10H7zM4 13V3h9",
  rename: "M4 16h3l9-9-3-3-9 9z",
  bin: "M4 6h12M8 6V4h4v2M6 6l1 11h6l1-11M8.5 9v5M11.5 9v5",
  save: "M10 3v9M6 8l4 4 4-4M4 16h12",
  fit: "M3 7V3h4M13 3h4v4M17 13v4h-4M7 17H3v-4",
  less: "M4 10h12",
  arrow: "M5 3l9 7-4.5.6L7.5 15z",
  part: "M6 7h8v6H6zM2 10h4M14 10h4",
  wire: "M3 5h6v10h8",
  edit: "M4 16h3l9-9-3-3-9 9zM11 6l3 3",
  move: "M10 3v14M3 10h14M8 5l2-2 2 2M8 15l2 2 2-2M5 8l-2 2 2 2M15 8l2 2-2 2",
  left: "M4 3v14M7 6h9v3H7zM7 12h5v3H7z",
  arrange: "M7 3h6v4H7zM3 13h5v4H3zM12 13h5v4h-5zM10 7v3M5.5 13v-3h9v3",
  across: "M3 4v12M17 4v12M8 7h4v6H8z",
  turn: "M14 5a6 6 0 1 1-8 0M14 5V1M14 5h-4",
  flip: "M10 3v14M7 6v8H3zM13 6v8h4",
  help: "M10 6.2C8.4 4.8 6 4.2 3 4.4V15c3-.2 5.4.4 7 1.8 1.6-1.4 4-2 7-1.8V4.4c-3-.2-5.4.4-7 1.8ZM10 6.2v10.6",
  settings: "M3 6h8M15 6h2M3 14h2M9 14h8M13 4v4M7 12v4",
} as const;

/** Name of an icon of the family. */
export type IconName = keyof typeof PATHS;

/** An icon of the family; it is decoration, so whatever holds it carries the name. */
export function Icon({ name, size = 20 }: { readonly name: IconName; readonly size?: 16 | 20 }) {
  return (
    <svg
      className="icon"
      width={size}
      height={size}
      viewBox="0 0 20 20"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.6"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d={PATHS[name]} />
    </svg>
  );
}
