import { hashOf } from "../base/hash.ts";

/** Signs of a sheet code: figures and capitals without 0 O 1 I L, which a pencil confuses. */
export const CODE_SIGNS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const CODE_LENGTH = 4;

/**
 * The code of printed sheets: 4 signs that follow from what they show, so that the same content has the same code on any
 * paper. `shown` is any plain value; key order counts.
 */
export function sheetCode(shown: unknown): string {
  let hash = hashOf(JSON.stringify(shown) ?? "");
  let code = "";
  for (let i = 0; i < CODE_LENGTH; i++) {
    code += CODE_SIGNS[hash % CODE_SIGNS.length];
    hash = Math.floor(hash / CODE_SIGNS.length);
  }
  return code;
}
