/** Id of a part, `S5`. */
export type PartId = string;
/** Id of a wire, `W13`. */
export type WireId = string;
/** Id of a connector, `X5`. */
export type ConnectorId = string;
/**
 * A place where a wire can end or a probe can touch. `S5.6` is the part's terminal, `X5-6` the wire side of a
 * cavity, `X30-1a` one side of an in-line joint. These spellings stand everywhere: file, screen, sheets, command line.
 */
export type PointId = string;
/** What a condition sets: `S5` where a part has one control, `S2.middle` where it has several. */
export type ControlKey = string;
