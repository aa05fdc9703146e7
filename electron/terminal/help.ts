/** How a condition is typed, for every help text. */
export const CONDITION_HELP = `A condition is what differs from rest, with commas: S1=on,S5=open throws two switches in that order;
apart:X5 pulls a plug; out:F3 takes a fuse or relay out; battery:off; engine:running; ambient:80 in degC;
drive:U1.3=on drives a module's output.`;

/** How a fault is typed. */
export const FAULT_HELP = `A fault is TARGET:MODE or TARGET:MODE=VALUE, the target a part, wire or pin: W13:open, X5-6:corroded=20,
M3:seized, F4:blown, W7:crossed=W9. With ~ and a number it comes and goes by a pattern of that number, W13:open~5: the
window lets time pass, here it is shown while it is there.`;
