import type { Vec3 } from "../geometry/vector";
import type { SurfacePoint } from "../materials/surface-point";
import type { LightRig } from "./lamp";

interface FlatLamp {
  x: number;
  y: number;
  z: number;
  sharpness: number;
  r: number;
  g: number;
  b: number;
  /** Radiance at the lamp's middle for unit irradiance. */
  peak: number;
  wrap: number;
  shadow: boolean;
}

/** Lights one surface point; writes linear RGB into `out` at `at`. */
export type Shade = (
  point: SurfacePoint,
  nx: number,
  ny: number,
  nz: number,
  vx: number,
  vy: number,
  vz: number,
  shadow: number,
  fall: number,
  openness: number,
  out: Float32Array,
  at: number,
) => void;

function flatten(rig: LightRig): FlatLamp[] {
  return rig.lamps.map((lamp) => ({
    x: lamp.towards[0],
    y: lamp.towards[1],
    z: lamp.towards[2],
    sharpness: lamp.sharpness,
    r: lamp.colour[0],
    g: lamp.colour[1],
    b: lamp.colour[2],
    peak: lamp.sharpness / (2 * Math.PI * (1 - Math.exp(-2 * lamp.sharpness))),
    wrap: 0.9 / Math.sqrt(lamp.sharpness),
    shadow: lamp.castsShadow,
  }));
}

/**
 * GGX mirror light and Lambert diffuse light from soft lamps and a two-tone room.
 * Lamps are spherical Gaussians and the GGX lobe is warped to one, so that a rough surface and a soft lamp meet in
 * closed form (Wang et al., ACM TOG 28, 2009; Schlick 1994 for Fresnel; Karis 2013 for the visibility term).
 * One long function on purpose: it runs for every point of the plate, and parts that hand each other three colours and
 * two directions would allocate them anew each time.
 */
export function createShade(rig: LightRig, up: Vec3): Shade {
  const lamps = flatten(rig);
  const [skyR, skyG, skyB] = rig.sky;
  const [floorR, floorG, floorB] = rig.floor;
  const [upX, upY, upZ] = up;
  return (p, nx, ny, nz, vx, vy, vz, shadow, fall, openness, out, at) => {
    const nv = Math.max(0.08, nx * vx + ny * vy + nz * vz);
    const rx = 2 * nv * nx - vx;
    const ry = 2 * nv * ny - vy;
    const rz = 2 * nv * nz - vz;
    const alpha = p.rough * p.rough;
    const lobe = 0.5 / (alpha * alpha * nv);
    const amplitude = 1 / (Math.PI * alpha * alpha);
    const k = ((p.rough + 1) * (p.rough + 1)) / 8;
    const grazing = (1 - nv) ** 5 * (1 - p.rough * 0.7);
    const fr = p.fr + (1 - p.fr) * grazing;
    const fg = p.fg + (1 - p.fg) * grazing;
    const fb = p.fb + (1 - p.fb) * grazing;
    // The room: a bright sky, a darker floor, and a dim band at eye height where the walls are.
    const rise = rx * upX + ry * upY + rz * upZ;
    const t = rise <= -0.35 ? 0 : rise >= 0.75 ? 1 : (rise + 0.35) / 1.1;
    const room = t * t * (3 - 2 * t);
    const open = openness;
    // What faces the viewer straight mirrors the viewer, who is darker than the room.
    const back = nv <= 0.8 ? 0 : (nv - 0.8) * 5;
    const viewer = 1 - 0.62 * (1 - 0.6 * p.rough) * back * back;
    const mirror = open * (0.4 + 0.6 * open) * (1 - 0.25 * alpha) * viewer;
    const lit = 0.5 + 0.5 * (nx * upX + ny * upY + nz * upZ);
    let r =
      (floorR + (skyR - floorR) * lit) * p.dr * open +
      (floorR * 0.7 + (skyR * 1.1 - floorR * 0.7) * room) * fr * mirror;
    let g =
      (floorG + (skyG - floorG) * lit) * p.dg * open +
      (floorG * 0.7 + (skyG * 1.1 - floorG * 0.7) * room) * fg * mirror;
    let b =
      (floorB + (skyB - floorB) * lit) * p.db * open +
      (floorB * 0.7 + (skyB * 1.1 - floorB * 0.7) * room) * fb * mirror;
    for (let i = 0; i < lamps.length; i++) {
      const lamp = lamps[i]!;
      const nl = nx * lamp.x + ny * lamp.y + nz * lamp.z;
      const facing = (nl + lamp.wrap) / (1 + lamp.wrap);
      if (facing <= 0) continue;
      const seen = fall * (lamp.shadow ? shadow : 0.35 + 0.65 * open);
      const diffuse = facing * seen * 0.3183;
      const sum = lobe + lamp.sharpness;
      const d = Math.sqrt(
        (lobe * rx + lamp.sharpness * lamp.x) ** 2 +
          (lobe * ry + lamp.sharpness * lamp.y) ** 2 +
          (lobe * rz + lamp.sharpness * lamp.z) ** 2,
      );
      const glint = (2 * Math.PI * amplitude * lamp.peak * Math.exp(d - sum)) / Math.max(d, 1e-6);
      const nlSafe = Math.max(0.05, nl);
      const visibility = 0.25 / ((nlSafe * (1 - k) + k) * (nv * (1 - k) + k));
      const specular = Math.min(60, glint * visibility * nlSafe) * seen;
      r += lamp.r * (p.dr * diffuse + fr * specular);
      g += lamp.g * (p.dg * diffuse + fg * specular);
      b += lamp.b * (p.db * diffuse + fb * specular);
    }
    out[at] = r;
    out[at + 1] = g;
    out[at + 2] = b;
  };
}
