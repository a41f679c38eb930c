// A square code of an address, for a phone's camera.
import code from "qrcode-generator";

export function qrSvg(address: string): string {
  const made = code(0, "M");
  made.addData(address);
  made.make();
  return made.createSvgTag({ cellSize: 4, margin: 8, scalable: true });
}
