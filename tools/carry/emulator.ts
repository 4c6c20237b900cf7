import { deriveSeed, normalDeviate, uniformSource } from "#engine/random";

/**
 * A small network that learns from single runs how likely each kind of outcome is, so that the fit may ask for millions of hits.
 * Two hidden layers of tanh, softmax over exclusive kinds, and one more output of its own for the ball's path; trained by Adam
 * (Kingma & Ba 2015) on log loss. All of it is seeded: the same runs give the same network.
 */
export interface Network {
  readonly inputs: number;
  readonly kinds: number;
  readonly layers: readonly Layer[];
}

interface Layer {
  readonly from: number;
  readonly to: number;
  /** Row by row, `from` weights and a bias for each of `to` outputs. */
  readonly weights: Float64Array;
}

/** Runs as numbers: inputs scaled to about −1 … 1, the kind that happened, and whether the ball took the ideal path. */
export interface Sample {
  readonly input: Float64Array;
  readonly kind: number;
  readonly onPath: boolean;
}

const HIDDEN = 40;
const BATCH = 64;
const FIRST_RATE = 0.004;
const WEIGHT_DECAY = 2e-5;
const [BETA1, BETA2, EPSILON] = [0.9, 0.999, 1e-8];

export function trainNetwork(samples: readonly Sample[], kinds: number, epochs: number, seed: number): Network {
  const inputs = samples[0].input.length;
  const uniform = uniformSource(deriveSeed(seed, 1));
  const sizes = [inputs, HIDDEN, HIDDEN, kinds + 1];
  const layers = sizes.slice(1).map((to, i) => newLayer(sizes[i], to, uniform));
  const network = { inputs, kinds, layers };
  const gradients = layers.map(({ weights }) => new Float64Array(weights.length));
  const first = layers.map(({ weights }) => new Float64Array(weights.length));
  const second = layers.map(({ weights }) => new Float64Array(weights.length));
  const order = Int32Array.from(samples, (_, i) => i);
  const work = newWork(network);
  const steps = Math.ceil(samples.length / BATCH) * epochs;
  let step = 0;
  for (let epoch = 0; epoch < epochs; epoch++) {
    shuffle(order, uniform);
    for (let start = 0; start < order.length; start += BATCH) {
      const batch = order.subarray(start, start + BATCH);
      for (const gradient of gradients) gradient.fill(0);
      for (const index of batch) learn(network, samples[index], work, gradients);
      step++;
      // The rate falls along half a cosine to nothing.
      const rate = (FIRST_RATE * (1 + Math.cos((Math.PI * step) / steps))) / 2;
      const [mend1, mend2] = [1 - BETA1 ** step, 1 - BETA2 ** step];
      layers.forEach(({ weights }, l) => {
        for (let w = 0; w < weights.length; w++) {
          const slope = gradients[l][w] / batch.length + WEIGHT_DECAY * weights[w];
          first[l][w] = BETA1 * first[l][w] + (1 - BETA1) * slope;
          second[l][w] = BETA2 * second[l][w] + (1 - BETA2) * slope * slope;
          weights[w] -= (rate * (first[l][w] / mend1)) / (Math.sqrt(second[l][w] / mend2) + EPSILON);
        }
      });
    }
  }
  return network;
}

function newLayer(from: number, to: number, uniform: () => number): Layer {
  const scale = 1 / Math.sqrt(from);
  return { from, to, weights: Float64Array.from({ length: to * (from + 1) }, () => normalDeviate(uniform()) * scale) };
}

function shuffle(order: Int32Array, uniform: () => number): void {
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [order[i], order[j]] = [order[j], order[i]];
  }
}

/** Values and errors of every layer, kept between calls. */
interface Work {
  readonly values: readonly Float64Array[];
  readonly errors: readonly Float64Array[];
}

function newWork({ layers }: Network): Work {
  return { values: layers.map(({ to }) => new Float64Array(to)), errors: layers.map(({ to }) => new Float64Array(to)) };
}

/** Fills `work.values`; the last holds probabilities: the kinds, which sum to one, then the path's. */
function forward({ layers, kinds }: Network, input: ArrayLike<number>, { values }: Work): Float64Array {
  let before: ArrayLike<number> = input;
  layers.forEach(({ from, to, weights }, l) => {
    const out = values[l];
    const isLast = l === layers.length - 1;
    for (let row = 0; row < to; row++) {
      let sum = weights[row * (from + 1) + from];
      for (let i = 0; i < from; i++) sum += weights[row * (from + 1) + i] * before[i];
      out[row] = isLast ? sum : Math.tanh(sum);
    }
    before = out;
  });
  const out = values[layers.length - 1];
  let top = -Infinity;
  for (let k = 0; k < kinds; k++) top = Math.max(top, out[k]);
  let total = 0;
  for (let k = 0; k < kinds; k++) total += out[k] = Math.exp(out[k] - top);
  for (let k = 0; k < kinds; k++) out[k] /= total;
  out[kinds] = 1 / (1 + Math.exp(-out[kinds]));
  return out;
}

/** Adds the slope of one sample's log loss to the gradients. */
function learn(network: Network, { input, kind, onPath }: Sample, work: Work, gradients: readonly Float64Array[]): void {
  const { layers, kinds } = network;
  const out = forward(network, input, work);
  const last = work.errors[layers.length - 1];
  for (let k = 0; k < kinds; k++) last[k] = out[k] - (k === kind ? 1 : 0);
  last[kinds] = out[kinds] - (onPath ? 1 : 0);
  for (let l = layers.length - 1; l >= 0; l--) {
    const { from, to, weights } = layers[l];
    const before: ArrayLike<number> = l === 0 ? input : work.values[l - 1];
    const [errors, gradient] = [work.errors[l], gradients[l]];
    for (let row = 0; row < to; row++) {
      const at = row * (from + 1);
      for (let i = 0; i < from; i++) gradient[at + i] += errors[row] * before[i];
      gradient[at + from] += errors[row];
    }
    if (l === 0) return;
    const down = work.errors[l - 1];
    for (let i = 0; i < from; i++) {
      let sum = 0;
      for (let row = 0; row < to; row++) sum += errors[row] * weights[row * (from + 1) + i];
      down[i] = sum * (1 - before[i] * before[i]);
    }
  }
}

/** A function of inputs that returns the mean of several networks' probabilities; the array is overwritten by the next call. */
export function committee(networks: readonly Network[]): (input: ArrayLike<number>) => Float64Array {
  const works = networks.map(newWork);
  const mean = new Float64Array(networks[0].kinds + 1);
  return (input) => {
    mean.fill(0);
    networks.forEach((network, n) => {
      const out = forward(network, input, works[n]);
      for (let k = 0; k < mean.length; k++) mean[k] += out[k] / networks.length;
    });
    return mean;
  };
}
