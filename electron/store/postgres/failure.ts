import { type Refusal, refuse } from "../../../core/base/outcome.ts";
import { nameOf, type ServerAddress } from "./address.ts";

/**
 * Beginnings of what PostgreSQL (its manual, appendix A, "PostgreSQL Error Codes"), Node's sockets and its TLS say, and what
 * each is to a person.
 */
const BY_CODE: readonly (readonly [code: RegExp, refusal: string])[] = [
  [/^28/, "store-server-denied"],
  [/^3D000/, "store-server-database"],
  [/^42501/, "store-server-rights"],
  [/^(53100|53200|54|ENOSPC)/, "store-server-full"],
  [/^(25006|57P05)/, "store-server-read-only"],
  [/^(40001|40P01|55P03|57014|53300|53400)/, "store-server-busy"],
  [/^(58|XX)/, "store-server-fault"],
  [/CERT|SELF_SIGNED|UNABLE_TO_VERIFY|UNABLE_TO_GET_ISSUER|ERR_TLS|ERR_SSL|EPROTO/, "store-server-certificate"],
  [/^(08|57P0[123]|ENOTFOUND|EAI_AGAIN)/, "store-server-gone"],
  [/^E[A-Z0-9]+$/, "store-server-gone"],
];

/** What comes without a code of its own. */
const BY_WORDS: readonly (readonly [words: RegExp, refusal: string])[] = [
  [/does not support SSL/i, "store-server-no-tls"],
  [/terminated|timeout|timed out|not queryable|Connection ended/i, "store-server-gone"],
  [/password|SASL/i, "store-server-denied"],
];

/** What a failure of the server, or of the line to it, means to a person; null where it is a fault of the program's own. */
export function serverRefusal(error: unknown, address: Pick<ServerAddress, "host" | "database">): Refusal | null {
  if (!(error instanceof Error)) return null;
  // Several addresses of one name were tried, and each failed.
  const first = error instanceof AggregateError ? error.errors[0] : error;
  const code = first instanceof Error && "code" in first ? String(first.code) : "";
  const found =
    BY_CODE.find(([pattern]) => code !== "" && pattern.test(code)) ??
    (code === "" ? BY_WORDS.find(([pattern]) => pattern.test(error.message)) : undefined);
  return found ? refuse(found[1], { library: nameOf(address) }).refusal : null;
}

/** True where the same once more may well succeed: two transactions were in each other's way, and this one was taken back. */
export function isInTheWay(error: unknown): boolean {
  return error instanceof Error && "code" in error && ["40001", "40P01"].includes(String(error.code));
}
