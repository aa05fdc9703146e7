/** Named numbers. The name carries the unit; arithmetic stays plain. SI units unless the name says otherwise. */
export type Volts = number;
export type Amps = number;
export type Ohms = number;
export type Watts = number;
export type Siemens = number;
export type Metres = number;
export type SquareMillimetres = number;
export type Minutes = number;
export type Seconds = number;
export type Celsius = number;
/** A share from 0 to 1. */
export type Share = number;
/** A length on the drawing: one grid unit is 2.5 mm of the printed page. */
export type GridUnits = number;
export type Millimetres = number;
