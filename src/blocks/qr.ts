/** A text as a QR code, for phones in the room. Fetched only when one is shown. */
import qrcode from "qrcode-generator";

export interface QrCode {
  /** Modules along one side, without the quiet zone. */
  readonly size: number;
  /** The dark modules as one path, in modules. */
  readonly path: string;
}

/** The clear edge that a reader needs, in modules. Source: ISO/IEC 18004. */
export const quietZone = 4;

/** Makes the code, as small as the text allows, with the middle degree of correction; null when the text is too long. */
export function qrCode(text: string): QrCode | null {
  const code = qrcode(0, "M");
  try {
    code.addData(text);
    code.make();
  } catch {
    return null;
  }
  const size = code.getModuleCount();
  let path = "";
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const from = x;
      while (x < size && code.isDark(y, x)) x++;
      if (x > from) path += `M${from},${y}h${x - from}v1h${from - x}z`;
    }
  }
  return { size, path };
}
