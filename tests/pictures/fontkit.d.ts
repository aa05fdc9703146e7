/** The little of fontkit, the font reader inside pdfkit, that the width table and its test use. */
declare module "fontkit" {
  export interface Font {
    readonly unitsPerEm: number;
    readonly familyName: string;
    readonly capHeight: number;
    readonly characterSet: readonly number[];
    layout(text: string, features: Readonly<Record<string, boolean>>): { readonly advanceWidth: number };
  }
  export function create(bytes: Uint8Array): Font;
}
