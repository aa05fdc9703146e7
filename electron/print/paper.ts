export { isPaper, PAPERS, type Paper, type Placing, type PrintPalette, placingOn } from "../../core/paper/placing.ts";
