import type { Circuit } from "../../core/circuit/circuit.ts";
import { openPage } from "./page.ts";

/*
 * The whole program of a take-home page. It is bundled into one script, and the circuit lies beside it in the same file as
 * JSON that the host has checked; there is no host to ask, and nothing to load.
 */
const circuit = JSON.parse(document.getElementById("circuit")?.textContent ?? "") as Circuit;
openPage(circuit, document.body);
