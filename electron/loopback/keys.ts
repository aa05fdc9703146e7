import { randomBytes, timingSafeEqual } from "node:crypto";

/** Hands out addresses that work once, and knows the pages that came in by one. */
export interface Keys {
  /** A word that lets one page in, once. */
  newToken(): string;
  /** The cookie for a page that comes with such a word, or null where the word is unknown or used. */
  cookieFor(token: string): string | null;
  /** True where this cookie header holds a cookie that was given out. */
  isKnown(header: string | undefined): boolean;
}

/**
 * Keys with none given out. A browser sends a cookie to every port of a machine, so each server's cookie has a name of its
 * own: two libraries in one browser do not throw each other out.
 */
export function newKeys(port: number): Keys {
  const cookie = `wirefathom-${port}`;
  const tokens = new Set<string>();
  const pages: string[] = [];
  return {
    newToken: () => {
      const token = secret();
      tokens.add(token);
      return token;
    },
    cookieFor: (token) => {
      if (!tokens.delete(token)) return null;
      const page = secret();
      pages.push(page);
      return `${cookie}=${page}; Path=/; HttpOnly; SameSite=Strict`;
    },
    isKnown: (header = "") =>
      header.split(";").some((each) => {
        const [name, value = ""] = each.trim().split("=");
        return name === cookie && pages.some((page) => isSame(page, value));
      }),
  };
}

/** A word that cannot be guessed: 256 bits. */
export function secret(): string {
  return randomBytes(32).toString("base64url");
}

/** Compares two secrets in a time that does not tell where they part. */
export function isSame(one: string, other: string): boolean {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
}
