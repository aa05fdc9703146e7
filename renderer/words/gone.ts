/** That the host does not answer, and what can be done. */
export const GONE_WORDS = "The program behind this page does not answer. Start it again; what was kept is still there.";
