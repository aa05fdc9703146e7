/** A red field on white, 48 by 32, as a JPEG in the four inks of a press. */
export const CMYK_JPEG = Buffer.from(
  [
    "/9j/7gAOQWRvYmUAZAAAAAAC/9sAQwAFAwQEBAMFBAQEBQUFBgcMCAcHBwcPCwsJDBEPEhIRDxERExYcFxMUGhURERghGBodHR8fHxMXIiQi",
    "HiQcHh8e/9sAQwEFBQUHBgcOCAgOHhQRFB4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4eHh4e/8AAFAgA",
    "IAAwBAEiAAIRAQMRAQQiAP/EABoAAAIDAQEAAAAAAAAAAAAAAAcIAAUGCQT/xAA1EAAABAIDDQgDAQAAAAAAAAAAAQIEAwUGERYHFxhTVFVW",
    "kpOjpNHTEiE1N3R1stITMbNB/8QAGAEBAQADAAAAAAAAAAAAAAAABQYBAgf/xAAvEQABAAgCBwkBAAAAAAAAAAABAAIDBAUGERJBURMUFRch",
    "MZFSU2GBkqGxwdHS/9oADgQBAAIRAxEEAAA/AEyBBvL3StG+Ob9QD4dAgpDXJm9XXk8KcvNIWdJne4FodXVVN91bgTytpShGaOWKm0kmyzdL",
    "5C2AnCfXl7pWjfHN+oJeXulaN8c36gcEQJ7FYZn2/Eht50W7tn0W/tCFaSTZZul8hLSSbLN0vkB6IE+vL3StG+Ob9QYaZsnMtmTmXPYf4nTW",
    "MuDGR2iV2VpM0qKsqyOoyPvIP0Edul+Y9Jvd3f8AZYOiLgzdlVSoTxzSykybHyON2rN4VVAVAItBGPiShCtJJss3S+Qs4MREaCiNDV2kLSSk",
    "nVVWR95AVAmyXwdl6eH8SGfHQIc/QYcIimmbKP7CN1RiFvjN2v0mNPtNp6l19jWg1UA2XVqac7afBT1gTgsDPWRluPd66fqGhECvYRFNM2Uf",
    "2EbqiYRFNM2Uf2Ebqhba7tmeic/3dRrsq+pMQINvZGW493rp+olkZbj3eun6hoQjt0vzHpN7u7/ssEHCIppmyj+wjdUCqeTGPN52+mzlMNEd",
    "65iOIiYZGSSUtRqMiIzM6qz/ANMwZE31k8KKhTBLiR5Yf4M3atHoABYAChrimIBNkvg7L08P4kKmyMtx7vXT9RetYKW7aE3QZmmEgkJM/wB1",
    "EVQ//9k=",
  ].join(""),
  "base64",
);

/** The same as JPEG 2000, as scanners put it into a PDF. */
const JPEG_2000 = Buffer.from(
  [
    "AAAADGpQICANCocKAAAAFGZ0eXBqcDIgAAAAAGpwMiAAAAAtanAyaAAAABZpaGRyAAAAIAAAADAAAwcHAAAAAAAPY29scgEAAAAAABAAAALN",
    "anAyY/9P/1EALwAAAAAAMAAAACAAAAAAAAAAAAAAADAAAAAgAAAAAAAAAAAAAwcBAQcBAQcBAf9SAAwAAAABAQUEBAAB/1wAE0BASEhQSEhQ",
    "SEhQSEhQSEhQ/2QAJQABQ3JlYXRlZCBieSBPcGVuSlBFRyB2ZXJzaW9uIDIuNS4w/5AACgAAAAACRgAB/5PPtAwDpQ+A34AYC3flx9oFPwA4",
    "/ACABucL920HJ4DH2gU/AEj8AIAETwr8P38Eo8faDR9oPB9QOBPzyYO/EQ4u/r+Bd9cR5wyeEyY/gMfaDx9oPB9QOBS1RVnbcX8NSvV+rylv",
    "ErqPKv66f8/ASn4C8fgJACsEbm33jHrqYqLpWFj24rv3exm8dr/V8fuYlKUyzccYOq0U1x5Ov+F/Lv5lrftmeQYg1iKyVkvDVoe/gM/ATn4C",
    "sfgJACpYbG4Dv6keFBixOmCyAce4aG8aekPf6vj9305i/Cuad9GUXpxNEwMuqGFWDDDPHpzlc0FVgNb45b/H2jUfaSwfUJAZHCBzZY0kmrYo",
    "LM/TGpLf7tFWuPe28MYGzyAx9Q2XUruw1b1Gzo+fvIiEIw0hC4KLlkDWgrxPKyiX/P9jr/EWpbXZ7TA88tu3/bLy0Pe4pJ+Ax9ozH2kcH1Cg",
    "GHAec2WNH6xC1hGKqGed9E1+q1OhATXZuiDd9w2XUruw1Y4QudGgfP3lExtlQKaJiWboQlkOt0NCAL8PFfmz2e0wPPLbt/2y8opVSS+6wN/H",
    "2jMfaNQfUEAkHg3xScqzz4ZyvnkMJX3Yz2qXAV309QRnKK8aHb0KuLag+3tZyjX9jNKJTedFL2ErQa8i8D82kVNmH4DH2jUfaPwfUFAk14nf",
    "+CrtHlsUc89ebBSPi0MGawZsLHPBhigDGB29Cri2oNaMb99gYA+BWDGBBxBWmQjii8DxSp8jnEE2kVNmBJq//9k=",
  ].join(""),
  "base64",
);

/** A PDF of one page, A4 lying, that is filled by a scan in JPEG 2000: ISO 32000-1, 7.5 and 7.4.9. */
export function scannedPdf(): Buffer {
  const content = "q 842 0 0 595 0 0 cm /Scan Do Q";
  const scan = `/Type /XObject /Subtype /Image /Width 48 /Height 32 /ColorSpace /DeviceRGB /BitsPerComponent 8`;
  const objects = [
    Buffer.from("<< /Type /Catalog /Pages 2 0 R >>"),
    Buffer.from("<< /Type /Pages /Kids [3 0 R] /Count 1 >>"),
    Buffer.from(
      "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 842 595] /Contents 4 0 R /Resources << /XObject << /Scan 5 0 R >> >> >>",
    ),
    Buffer.from(`<< /Length ${content.length} >>\nstream\n${content}\nendstream`),
    Buffer.concat([
      Buffer.from(`<< ${scan} /Filter /JPXDecode /Length ${JPEG_2000.length} >>\nstream\n`),
      JPEG_2000,
      Buffer.from("\nendstream"),
    ]),
  ];
  const pieces: Buffer[] = [Buffer.from("%PDF-1.5\n")];
  const starts: number[] = [];
  let length = pieces[0]!.length;
  for (const [index, object] of objects.entries()) {
    const piece = Buffer.concat([Buffer.from(`${index + 1} 0 obj\n`), object, Buffer.from("\nendobj\n")]);
    starts.push(length);
    pieces.push(piece);
    length += piece.length;
  }
  const rows = starts.map((start) => `${String(start).padStart(10, "0")} 00000 n \n`).join("");
  const table = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows}`;
  const end = `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${length}\n%%EOF\n`;
  return Buffer.concat([...pieces, Buffer.from(table + end)]);
}
