/** The few numbers of a hull section of the craft file, SI, as both the loft and the drag model take them. */
import type { Craft } from '../../craft/schema/craftSchema.ts'

export function measuresOf(h: Craft['hull']) {
  const fullness = h.noseRoundness.value
  return {
    length: h.length.value,
    beam: h.beam.value,
    chineBeam: h.chineBeam.value,
    depth: h.depth.value,
    deadrise: h.deadrise.value,
    midDeadrise: h.midDeadrise.value,
    noseDeadrise: h.noseDeadrise.value,
    noseRise: h.noseRise.value,
    noseRiseFrom: Math.min(h.noseRiseFrom.value, 0.98 * h.length.value),
    sternRise: h.sternRise.value,
    sternRiseOver: h.sternRiseOver.value,
    widestAt: Math.min(h.widestAt.value, 0.95 * h.length.value),
    tailWidth: h.tailWidth.value,
    // 1 a wedge, 2 an ellipse, above that a blunter board
    noseExponents: [fullness, Math.min(2, fullness)] as const,
  }
}
