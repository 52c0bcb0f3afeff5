declare module "subset-font" {
  interface Options {
    readonly targetFormat: "sfnt" | "woff" | "woff2";
    readonly keepFeatures?: readonly string[];
    readonly noHinting?: boolean;
    readonly variationAxes?: Readonly<Record<string, number>>;
  }
  export default function subsetFont(font: Buffer, text: string, options: Options): Promise<Buffer>;
}
