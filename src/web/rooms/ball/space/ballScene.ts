import {
  AmbientLight,
  BufferGeometry,
  CatmullRomCurve3,
  CircleGeometry,
  Color,
  DirectionalLight,
  Float32BufferAttribute,
  Group,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Object3D,
  PerspectiveCamera,
  Points,
  PointsMaterial,
  Quaternion,
  RingGeometry,
  Scene,
  SphereGeometry,
  TubeGeometry,
  Vector3,
  WebGLRenderer,
} from "three";
import { HOLE, HOLES } from "#drawing/sideDiagram";
import { ballCells } from "#engine/surface/padWork/cells";
import { SIDE_AXES, SIDE_IDS } from "#engine/surface/padWork/sides";
import { unit, type Vector } from "#engine/vector";
import type { PlacesOnBall } from "./placesOnBall.ts";

/** What is drawn on the ball. */
export interface OnBall {
  readonly places: PlacesOnBall;
  /** Work at each place over the mean; null where no pad work is signed. */
  readonly work: { readonly cells: number; readonly overMean: readonly number[] } | null;
}

/** A word that goes with a place of the ball: where it stands in the picture, 0–1 from the left and the top, and whether the place faces the viewer. */
export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly isSeen: boolean;
}

/** Work over the mean at which every grain of a place is drawn; the flat picture's own figure. */
const FULL = 1.8;
const GRAIN_PX = 2.4;
/** A hair above the cover, so that marks are not lost in it. */
const ABOVE = 1.004;
const AXIS_REACH = 1.3;

/** The ball in space, drawn when something has changed and at no other time. */
export class BallScene {
  readonly #renderer: WebGLRenderer;
  readonly #scene = new Scene();
  readonly #camera = new PerspectiveCamera(32, 1, 0.1, 20);
  readonly #ball = new Group();
  readonly #drawn: () => void;
  #frame = 0;

  /** @param drawn told after each picture: words beside the ball move with it */
  constructor(canvas: HTMLCanvasElement, onBall: OnBall, drawn: () => void) {
    this.#drawn = drawn;
    // What was drawn stays there for the printer.
    this.#renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, preserveDrawingBuffer: true });
    this.#camera.position.set(0, 0, 4.6);
    const light = new DirectionalLight(0xffffff, 1.6);
    light.position.set(-2, 3, 4);
    this.#scene.add(new AmbientLight(0xffffff, 1.7), light, this.#ball);
    this.#furnish(onBall);
    // Seen a little from above and from the right, so that it is seen to be round.
    this.turn(-0.45, 0.3);
  }

  #furnish({ places: { pap, pin, massBias, lines, track }, work }: OnBall): void {
    const paint = paints();
    const flat = (color: Color) => new MeshBasicMaterial({ color });
    this.#ball.add(new Mesh(new SphereGeometry(1, 64, 48), new MeshLambertMaterial({ color: paint.lane })));
    for (const hole of HOLES) this.#ball.add(lying(new CircleGeometry(HOLE, 32), flat(paint.ink), unit(hole)));
    for (const side of SIDE_IDS) this.#ball.add(lying(new RingGeometry(0.05, 0.065, 32), flat(paint.ink), SIDE_AXES[side]));
    if (work !== null) this.#ball.add(grains(work, paint.ink));
    if (track.length > 0) this.#ball.add(tube(track, 0.008, paint.oil, true));
    if (pap !== null) {
      this.#ball.add(lying(new RingGeometry(0.035, 0.06, 4), flat(paint.accent), pap));
      this.#ball.add(tube([pap, scaled(pap, AXIS_REACH)], 0.008, paint.accent, false));
    }
    for (const line of lines)
      this.#ball.add(
        tube(
          line.map((place) => scaled(place, ABOVE)),
          0.005,
          paint.accent,
          false,
        ),
      );
    if (massBias !== null) this.#ball.add(lying(new RingGeometry(0.025, 0.05, 3), flat(paint.accent), massBias));
    if (pin !== null) this.#ball.add(lying(new CircleGeometry(0.035, 24), flat(paint.accent), pin));
  }

  /** Turns the ball about the viewer's own axes, rad: positive to the right and downwards. */
  turn(right: number, down: number): void {
    const about = (axis: Vector3, angle: number) => new Quaternion().setFromAxisAngle(axis, angle);
    this.#ball.quaternion.premultiply(about(new Vector3(0, 1, 0), right)).premultiply(about(new Vector3(1, 0, 0), down));
    this.draw();
  }

  /** Puts a place of the ball in front. */
  face(place: Vector): void {
    const now = new Vector3(...place).applyQuaternion(this.#ball.quaternion).normalize();
    this.#ball.quaternion.premultiply(new Quaternion().setFromUnitVectors(now, new Vector3(0, 0, 1)));
    this.draw();
  }

  /** Where a place of the ball is in the picture. */
  placeOf(place: Vector, reach = 1): Placed {
    const at = new Vector3(...place).multiplyScalar(reach).applyQuaternion(this.#ball.quaternion);
    const isSeen = at.z > 0.12;
    const { x, y } = at.project(this.#camera);
    return { x: (x + 1) / 2, y: (1 - y) / 2, isSeen };
  }

  /** @param side of the square picture, px */
  resize(side: number): void {
    this.#renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    this.#renderer.setSize(side, side, false);
    this.draw();
  }

  draw(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => {
      this.#renderer.render(this.#scene, this.#camera);
      this.#drawn();
    });
  }

  dispose(): void {
    cancelAnimationFrame(this.#frame);
    this.#ball.traverse((part) => {
      if (!(part instanceof Mesh) && !(part instanceof Points)) return;
      part.geometry.dispose();
      part.material.dispose();
    });
    this.#renderer.dispose();
  }
}

/** The page's own colours, in whichever look it has now. */
function paints(): Readonly<Record<"lane" | "ink" | "oil" | "accent", Color>> {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string) => new Color(style.getPropertyValue(`--gw-${name}`).trim());
  return { lane: of("lane"), ink: of("ink"), oil: of("oil"), accent: of("accent") };
}

/** Something flat laid on the ball at a place. */
function lying(geometry: BufferGeometry, material: MeshBasicMaterial, place: Vector): Object3D {
  const mesh = new Mesh(geometry, material);
  const out = new Vector3(...place);
  mesh.position.copy(out).multiplyScalar(ABOVE);
  mesh.quaternion.setFromUnitVectors(new Vector3(0, 0, 1), out.normalize());
  return mesh;
}

function tube(points: readonly Vector[], radius: number, color: Color, closed: boolean): Object3D {
  const curve = new CatmullRomCurve3(
    points.map((point) => new Vector3(...point).multiplyScalar(closed ? ABOVE : 1)),
    closed,
  );
  return new Mesh(new TubeGeometry(curve, Math.max(2, 2 * points.length), radius, 8, closed), new MeshBasicMaterial({ color }));
}

function scaled([x, y, z]: Vector, factor: number): Vector {
  return [x * factor, y * factor, z * factor];
}

/** One grain a place, drawn where the place's turn in an even sequence lies below its share of the work: denser where the pad worked more, as in the flat picture. */
function grains({ cells, overMean }: NonNullable<OnBall["work"]>, color: Color): Object3D {
  const turn = (Math.sqrt(5) - 1) / 2;
  const at = ballCells(cells).at.filter((_, i) => overMean[i] / FULL > ((i % 34) * turn + Math.floor(i / 34) * Math.SQRT2) % 1);
  const geometry = new BufferGeometry();
  geometry.setAttribute(
    "position",
    new Float32BufferAttribute(
      at.flatMap((place) => scaled(place, ABOVE)),
      3,
    ),
  );
  return new Points(geometry, new PointsMaterial({ color, size: GRAIN_PX, sizeAttenuation: false }));
}
