import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  CapsuleGeometry,
  CircleGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  PerspectiveCamera,
  Scene as Space,
  SphereGeometry,
  Vector3,
  WebGLRenderer,
} from 'three'
import { bodyOf, type Limb } from '../../../../drawing/riderFigure.ts'
import { weightSum } from '../../../../hull/aboard/masses.ts'
import { riderCentre } from '../../../../hull/aboard/riderBody.ts'
import { makeFrame } from '../../../../physics/solid/waterFrame.ts'
import { aboardOf, type FloatInput } from '../../../../trades/float/input.ts'
import type { LiveState } from '../../../../trades/float/live.ts'
import { heightOver } from '../../../../trades/float/openingHeights.ts'

export type Outlook = 'three quarters' | 'from below' | 'from astern'

/** The picture in space. Drawn only when something in it has changed. */
export interface Scene {
  show(input: FloatInput, state: LiveState, draw: boolean): void
  /** turns about the upright by `around`, over by `over` (rad), and scales the distance */
  orbit(around: number, over: number, distance: number): void
  lookFrom(outlook: Outlook): void
  resize(): void
  end(): void
}

const outlooks: Record<Outlook, readonly [number, number]> = {
  'three quarters': [0.75, 0.38],
  'from below': [0.75, -0.35],
  'from astern': [Math.PI, 0.12],
}
const wet = 0xd55e00
const dry = 0x009e73

/** Undefined where the browser has no way to draw in space. */
export function createScene(canvas: HTMLCanvasElement): Scene | undefined {
  const context = canvas.getContext('webgl2', { antialias: true, alpha: true })
  if (!context) return undefined
  const renderer = new WebGLRenderer({ canvas, context, antialias: true, alpha: true })
  renderer.setPixelRatio(Math.min(2, devicePixelRatio))
  const space = new Space()
  const camera = new PerspectiveCamera(32, 1, 0.05, 60)
  const craft = new Group()
  craft.matrixAutoUpdate = false
  space.add(craft, new AmbientLight(0xffffff, 1.6))
  const sun = new DirectionalLight(0xffffff, 1.9)
  sun.position.set(2, 5, 3)
  const pond = water(1)
  space.add(sun, pond)
  let [around, over] = outlooks['three quarters']
  let reach = 5
  let middle = 1.2
  /** height looked at, m over the water */
  let aim = 0.12
  let last: FloatInput | undefined
  let frame = 0

  const draw = () => {
    frame = 0
    const level = Math.cos(over) * reach
    camera.position.set(middle + level * Math.cos(around), Math.sin(over) * reach, level * Math.sin(around))
    camera.lookAt(new Vector3(middle, aim, 0))
    renderer.render(space, camera)
  }
  const ask = () => {
    frame ||= requestAnimationFrame(draw)
  }
  const resize = () => {
    const { clientWidth: w, clientHeight: h } = canvas
    if (w === 0 || h === 0) return
    renderer.setSize(w, h, false)
    camera.aspect = w / h
    camera.updateProjectionMatrix()
    ask()
  }
  return {
    show(input, state) {
      if (input.hull !== last?.hull || input.rider.stance !== last.rider.stance) {
        middle = input.hull.length / 2
        // far enough for the whole length, and for the head of a rider who stands
        const head = tallOf(input.rider) + 0.25
        aim = 0.12 + 0.27 * Math.max(0, head - 0.9)
        reach = Math.max(1.95 * input.hull.length, (head - aim) / Math.tan(camera.fov * (Math.PI / 360)))
        pond.scale.setScalar(0.95 * input.hull.length)
        pond.position.x = middle
      }
      empty(craft)
      fill(craft, input, state)
      craft.matrix.copy(intoWater(state))
      craft.matrixWorldNeedsUpdate = true
      last = input
      resize()
    },
    orbit(a, o, d) {
      around += a
      over = Math.min(1.45, Math.max(-1.2, over + o))
      reach = Math.min(20, Math.max(0.6 * middle, reach * d))
      ask()
    },
    lookFrom(outlook) {
      ;[around, over] = outlooks[outlook]
      ask()
    },
    resize,
    end() {
      cancelAnimationFrame(frame)
      empty(craft)
      renderer.dispose()
    },
  }
}

/** m from the deck to the top of the rider as drawn */
const tallOf = ({ stance, stature }: FloatInput['rider']): number =>
  Math.max(0.3, 1.75 * riderCentre(stance, stature).height)

/** From body axes to space: forward x, up y from the water, starboard z. */
function intoWater({ attitude }: LiveState): Matrix4 {
  const f = makeFrame(attitude.trim, attitude.heel)
  return new Matrix4().set(
    ...([f.e1x, f.e1y, f.e1z, 0] as const),
    ...([f.nx, f.ny, f.nz, -attitude.h] as const),
    ...([0, -f.e2y, -f.e2z, 0] as const),
    ...([0, 0, 0, 1] as const),
  )
}

function water(radius: number): Mesh {
  const plane = new Mesh(
    new CircleGeometry(radius, 96),
    new MeshBasicMaterial({
      color: 0x56b4e9,
      transparent: true,
      opacity: 0.32,
      side: DoubleSide,
      depthWrite: false,
    }),
  )
  plane.rotation.x = -Math.PI / 2
  return plane
}

function fill(craft: Group, input: FloatInput, state: LiveState): void {
  const { hull, rider, openings } = input
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(hull.mesh.points), 3))
  geometry.setIndex(new BufferAttribute(Uint32Array.from(hull.mesh.triangles), 1))
  const flat = geometry.toNonIndexed()
  flat.computeVertexNormals()
  craft.add(
    new Mesh(
      flat,
      new MeshLambertMaterial({
        color: 0xe9e1cf,
        side: DoubleSide,
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
      }),
    ),
    new LineSegments(new EdgesGeometry(geometry, 22), new LineBasicMaterial({ color: 0x1b1a17 })),
  )
  geometry.dispose()
  const ball = (at: readonly number[], radius: number, colour: number) => {
    const sphere = new Mesh(
      new SphereGeometry(radius, 20, 14),
      new MeshLambertMaterial({ color: new Color(colour) }),
    )
    sphere.position.set(at[0]!, at[1]!, at[2]!)
    craft.add(sphere)
  }
  for (const o of openings)
    ball(o.at, 0.022, o.kind !== 'shaft seal' && heightOver(state.attitude, o.at) < 0 ? wet : dry)
  const c = riderCentre(rider.stance, rider.stature)
  const deck = state.rider[2] - (c.balances ? 0 : c.height)
  const person = riderInSpace(rider)
  person.position.set(rider.x, rider.y, deck)
  craft.add(person)
  const sum = weightSum(aboardOf(input))
  const mass = sum.mass + rider.mass
  const g = [0, 1, 2].map((k) => (sum.mass * sum.centre[k]! + rider.mass * state.rider[k]!) / mass)
  craft.add(cross(g, 0.09))
}

/** m that arms and legs are out from the middle of a body of stature 1 */
const apart: Partial<Record<Limb['name'], number>> = {
  foot: 0.06,
  shank: 0.06,
  thigh: 0.05,
  upperArm: 0.1,
  forearm: 0.1,
}

/** The rider as the pictures draw it, in space: trunk and head in the middle, arms and legs to both sides. */
function riderInSpace(rider: FloatInput['rider']): Group {
  const group = new Group()
  const look = new MeshLambertMaterial({ color: 0x0072b2, transparent: true, opacity: 0.55 })
  const { limbs, head } = bodyOf(rider.stance)
  const s = rider.stature
  const add = (from: readonly [number, number], to: readonly [number, number], r: number, y: number) => {
    const [dx, dz] = [to[0] - from[0], to[1] - from[1]]
    const bone = new Mesh(new CapsuleGeometry(s * r, s * Math.hypot(dx, dz), 6, 16), look)
    bone.position.set((s * (from[0] + to[0])) / 2, s * y, (s * (from[1] + to[1])) / 2)
    // a capsule stands along y; the body lies in the plane of x and z
    bone.quaternion.setFromUnitVectors(new Vector3(0, 1, 0), new Vector3(dx, 0, dz).normalize())
    group.add(bone)
  }
  for (const { name, from, to, breadths } of limbs) {
    const r = (breadths[0] + breadths[1]) / 2
    const y = apart[name] ?? 0
    for (const side of y === 0 ? [0] : [-1, 1]) add(from, to, r, side * y)
  }
  const skull = new Mesh(new SphereGeometry(s * head.r, 20, 14), look)
  skull.position.set(s * head.at[0], 0, s * head.at[1])
  group.add(skull)
  return group
}

function cross(at: readonly number[], r: number): LineSegments {
  const points = [0, 1, 2].flatMap((k) => [-r, r].flatMap((d) => at.map((v, i) => (i === k ? v + d : v))))
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3))
  return new LineSegments(geometry, new LineBasicMaterial({ color: 0xa3123a, depthTest: false }))
}

function empty(group: Group): void {
  for (const child of [...group.children]) {
    group.remove(child)
    const thing = child as Mesh<BufferGeometry, MeshBasicMaterial>
    thing.geometry?.dispose()
    thing.material?.dispose()
  }
}
