/**
 * How values are written in a link: in small letters, digits, `-` and `.` only, so that chats, mail and paper leave them
 * alone, and so that a capital letter always begins the next field.
 */
import type { Leaf } from "../shape.ts";

const utf8 = new TextEncoder();
const fromUtf8 = new TextDecoder("utf-8", { fatal: true });

/** Any text: small letters and digits as they are, a blank as `-`, each other byte of its UTF-8 as `.` and two digits. */
export function writeText(text: string): string {
  return [...utf8.encode(text)]
    .map((byte) => {
      const sign = String.fromCharCode(byte);
      if (/[a-z0-9]/.test(sign)) return sign;
      return sign === " " ? "-" : `.${byte.toString(16).padStart(2, "0")}`;
    })
    .join("");
}

/** The text that was written, or null where it is not one. */
export function readText(written: string): string | null {
  if (!/^(?:[a-z0-9-]|\.[0-9a-f]{2})*$/.test(written)) return null;
  const bytes = [...written.matchAll(/\.(..)|(.)/g)].map(([, hex, sign = ""]) =>
    hex === undefined ? (sign === "-" ? 32 : sign.charCodeAt(0)) : Number.parseInt(hex, 16),
  );
  try {
    return fromUtf8.decode(new Uint8Array(bytes));
  } catch {
    return null;
  }
}

/** A number in full precision: `n` for minus, `e` before a power of ten. */
const writeNumber = (value: number): string => String(value).replace("+", "").replaceAll("-", "n");

function readNumber(written: string): number | null {
  if (!/^n?\d{1,25}(?:\.\d{1,25})?(?:en?\d{1,3})?$/.test(written)) return null;
  return Number(written.replaceAll("n", "-"));
}

const NOTHING = "x";

/** The value of a field, as it stands in a link. */
export function writeValue(leaf: Leaf, value: unknown): string {
  if (value === null) return NOTHING;
  return typeof value === "number" && leaf.kind !== "text" ? writeNumber(value) : writeText(String(value));
}

/** The value that stands in a link for a field; what can't be read comes back as it is written, for the validator. */
export function readValue(leaf: Leaf, written: string): unknown {
  if (leaf.kind === "text" || leaf.kind === "choice") return readText(written) ?? written;
  if (leaf.kind === "nullable number" && written === NOTHING) return null;
  return readNumber(written) ?? written;
}

/** A checksum of seven letters and digits (FNV-1a, 32 bits): tells a damaged link, keeps nothing secret. */
export function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (const byte of utf8.encode(text)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash.toString(36).padStart(7, "0");
}
