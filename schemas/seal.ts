import { type Outcome, ok, refuse } from "../core/base/outcome.ts";

/**
 * How the hidden part of an exercise is sealed. It is enciphered (AES-GCM, 256 bits) under a key made for this file alone. That key
 * lies in the file twice: under a key from the instructor's passphrase (PBKDF2, SHA-256), and under one from a word of this program
 * and the open part (HKDF, SHA-256), since the learner's program must solve with the fault that it does not show. All three are
 * bound to the open part, and the hidden part to the instructor's key and its rounds as well: when any of them is changed, the
 * exercise does not open. It keeps the fault from whoever reads the file, the window or the store; not from a programmer with a
 * debugger, who has both the file and the program.
 */
export interface Sealed {
  /** Salt of both keys, and how often the passphrase is stirred. */
  readonly salt: string;
  readonly rounds: number;
  /** The file's key, for the instructor and for the program; the hidden part. Hexadecimal, each with its nonce first. */
  readonly forInstructor: string;
  readonly forProgram: string;
  readonly content: string;
}

/** Rounds of PBKDF2 with SHA-256 (OWASP, "Password Storage Cheat Sheet", 2023). */
export const ROUNDS = 600_000;
/** Fewest rounds that are taken, and most: a file must not keep a program busy for minutes. */
export const ROUNDS_LIMITS = { least: 100_000, most: 5_000_000 } as const;
/** Fewest characters of a passphrase. */
export const LEAST_PASSPHRASE = 8;

const SALT_BYTES = 16;
const NONCE_BYTES = 12;
const KEY_BYTES = 32;
/** The hidden part is filled up to a multiple of this, so that its length tells nothing of the fault. */
const FILLED_TO = 4_096;
const PROGRAM_WORD = "wirefathom exercise, the learner's program";
const HANDIN_WORD = "wirefathom hand-in";

/** A key as this platform's cipher holds it: never as bytes that could be written down. */
export type Key = Awaited<ReturnType<typeof crypto.subtle.importKey>>;

const bytesOf = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);

/** SHA-256 of a text, 64 signs in lower case. */
export async function sha256(text: string): Promise<string> {
  return hex(new Uint8Array(await crypto.subtle.digest("SHA-256", bytesOf(text))));
}

/** Seals a text for an open part, given as its hash. Refuses `passphrase-short`. */
export async function seal(
  hidden: string,
  open: string,
  passphrase: string,
  rounds: number = ROUNDS,
): Promise<Outcome<Sealed>> {
  if ([...passphrase].length < LEAST_PASSPHRASE) return refuse("passphrase-short", { least: LEAST_PASSPHRASE });
  const salt = crypto.getRandomValues(new Uint8Array(SALT_BYTES));
  const fileKey = crypto.getRandomValues(new Uint8Array(KEY_BYTES));
  const forInstructor = await encipher(await instructorKey(passphrase, salt, rounds), fileKey, open);
  return ok({
    salt: hex(salt),
    rounds,
    forInstructor,
    forProgram: await encipher(await programKey(salt, open), fileKey, open),
    content: await encipher(await aesKey(fileKey), filled(hidden), boundTo({ rounds, forInstructor }, open)),
  });
}

/** What the hidden part is bound to: what the passphrase opens cannot be exchanged under it. */
function boundTo({ rounds, forInstructor }: Pick<Sealed, "rounds" | "forInstructor">, open: string): string {
  return [open, rounds, forInstructor].join(" ");
}

/** What a seal holds, and the key that hand-ins of its exercise are signed with. */
export interface Unsealed {
  readonly hidden: string;
  readonly handinKey: Key;
}

/** Opens a seal for the learner's program, which shows nothing of it. Refuses `exercise-changed` where file or seal was altered. */
export async function unsealForProgram(sealed: Sealed, open: string): Promise<Outcome<Unsealed>> {
  const fileKey = await decipher(await programKey(unhex(sealed.salt), open), sealed.forProgram, open);
  return fileKey ? unsealed(sealed, open, fileKey) : refuse("exercise-changed");
}

/** Opens a seal for the instructor. Refuses `exercise-changed`, and `passphrase-wrong` where only the passphrase does not fit. */
export async function unsealForInstructor(
  sealed: Sealed,
  open: string,
  passphrase: string,
): Promise<Outcome<Unsealed>> {
  const whole = await unsealForProgram(sealed, open);
  if (!whole.ok) return whole;
  const key = await instructorKey(passphrase, unhex(sealed.salt), sealed.rounds);
  const fileKey = await decipher(key, sealed.forInstructor, open);
  return fileKey ? unsealed(sealed, open, fileKey) : refuse("passphrase-wrong");
}

async function unsealed(sealed: Sealed, open: string, fileKey: Uint8Array<ArrayBuffer>): Promise<Outcome<Unsealed>> {
  const key = await aesKey(fileKey);
  const bound = await decipher(key, sealed.content, boundTo(sealed, open));
  // Exercises that were made earlier are bound to the open part alone.
  const hidden = bound ?? (await decipher(key, sealed.content, open));
  if (!hidden) return refuse("exercise-changed");
  const base = await crypto.subtle.importKey("raw", fileKey, "HKDF", false, ["deriveKey"]);
  const handinKey = await crypto.subtle.deriveKey(
    { name: "HKDF", hash: "SHA-256", salt: new Uint8Array(0), info: bytesOf(HANDIN_WORD) },
    base,
    { name: "HMAC", hash: "SHA-256", length: 256 },
    false,
    ["sign", "verify"],
  );
  return ok({ hidden: new TextDecoder().decode(hidden).trimEnd(), handinKey });
}

function filled(text: string): Uint8Array<ArrayBuffer> {
  const bytes = bytesOf(text);
  const whole = new Uint8Array(Math.ceil(Math.max(1, bytes.length) / FILLED_TO) * FILLED_TO).fill(" ".charCodeAt(0));
  whole.set(bytes);
  return whole;
}

// ---------------------------------------------------------------- keys

async function instructorKey(passphrase: string, salt: Uint8Array<ArrayBuffer>, rounds: number): Promise<Key> {
  // One spelling of what looks alike: an accent typed as one sign or as two.
  const words = bytesOf(passphrase.normalize("NFC"));
  const base = await crypto.subtle.importKey("raw", words, "PBKDF2", false, ["deriveKey"]);
  return derived({ name: "PBKDF2", hash: "SHA-256", salt, iterations: rounds }, base);
}

async function programKey(salt: Uint8Array<ArrayBuffer>, open: string): Promise<Key> {
  const base = await crypto.subtle.importKey("raw", bytesOf(open), "HKDF", false, ["deriveKey"]);
  return derived({ name: "HKDF", hash: "SHA-256", salt, info: bytesOf(PROGRAM_WORD) }, base);
}

function derived(how: Parameters<typeof crypto.subtle.deriveKey>[0], base: Key): Promise<Key> {
  return crypto.subtle.deriveKey(how, base, { name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"]);
}

function aesKey(raw: Uint8Array<ArrayBuffer>): Promise<Key> {
  return crypto.subtle.importKey("raw", raw, "AES-GCM", false, ["encrypt", "decrypt"]);
}

// ---------------------------------------------------------------- cipher

/** Nonce and cipher text in hexadecimal; `about` goes unenciphered and cannot be changed unseen. */
async function encipher(key: Key, plain: Uint8Array<ArrayBuffer>, about: string): Promise<string> {
  const nonce = crypto.getRandomValues(new Uint8Array(NONCE_BYTES));
  const cipher = await crypto.subtle.encrypt(
    { name: "AES-GCM", iv: nonce, additionalData: bytesOf(about) },
    key,
    plain,
  );
  return hex(nonce) + hex(new Uint8Array(cipher));
}

/** The plain bytes, or null where key, cipher text or what it is bound to does not fit. */
async function decipher(key: Key, text: string, about: string): Promise<Uint8Array<ArrayBuffer> | null> {
  const bytes = unhex(text);
  try {
    const plain = await crypto.subtle.decrypt(
      { name: "AES-GCM", iv: bytes.slice(0, NONCE_BYTES), additionalData: bytesOf(about) },
      key,
      bytes.slice(NONCE_BYTES),
    );
    return new Uint8Array(plain);
  } catch {
    return null;
  }
}

/** Signs a text with the key of an exercise's hand-ins. */
export async function signed(key: Key, text: string): Promise<string> {
  return hex(new Uint8Array(await crypto.subtle.sign("HMAC", key, bytesOf(text))));
}

function hex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

function unhex(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(text.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
}
