// How a phone lies: the slope of its long side, read for a second.
interface Asking { requestPermission?: () => Promise<string> }

const longest = 2500; // milliseconds without a word from the sensor
const reading = 1000;

/** Degrees the long side rises towards the top of the phone, below zero where it falls; as JSON, or why there are none: 'none' for no sensor, 'denied'. */
export async function read(): Promise<string> {
  const sensor = (globalThis as { DeviceOrientationEvent?: Asking }).DeviceOrientationEvent;
  if (!sensor) return JSON.stringify({ fault: "none" });
  try {
    if (sensor.requestPermission && await sensor.requestPermission() !== "granted") return JSON.stringify({ fault: "denied" });
  } catch {
    return JSON.stringify({ fault: "denied" });
  }
  return new Promise((done) => {
    const rises: number[] = [];
    const end = (): void => {
      removeEventListener("deviceorientation", hear);
      // However the phone is turned about its long side, that side's own rise is the sine of beta.
      const mean = rises.reduce((sum, rise) => sum + rise, 0) / rises.length;
      done(JSON.stringify(rises.length > 0 ? { degrees: Math.asin(mean) * 180 / Math.PI } : { fault: "none" }));
    };
    let timer = setTimeout(end, longest);
    const hear = (event: DeviceOrientationEvent): void => {
      if (event.beta === null) return;
      if (rises.length === 0) { clearTimeout(timer); timer = setTimeout(end, reading); }
      rises.push(Math.sin(event.beta * Math.PI / 180));
    };
    addEventListener("deviceorientation", hear);
  });
}
