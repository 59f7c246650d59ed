/**
 * RODASP, a Rosenbrock method of order 4 with an embedded one of order 3: six stages, L-stable, stiffly accurate, its
 * own dense output of order 3, and no loss of order under stiff forcing.
 *
 * Steinebach (1995), Order-reduction of ROW-methods for DAEs and method of lines applications, TH Darmstadt preprint
 * 1741, in the transformed form of Hairer & Wanner (1996), Solving Ordinary Differential Equations II, sec. IV.7:
 * (I/(hγ) − J) u_i = f(t + α_i h, y + Σ a_ij u_j) + Σ (c_ij/h) u_j + h d_i ∂f/∂t.
 */
export const STAGES = 6;
export const GAMMA = 0.25;

/** Rows a_i0 … of the stage values; the last stage and the new value follow by adding u_4 and u_5. */
export const A = [
  [],
  [3],
  [1.831036793486759, 0.4955183967433795],
  [2.304376582692669, -0.05249275245743001, -1.176798761832782],
  [-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401],
  [-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401, 1],
];
export const C = [
  [],
  [-12],
  [-8.791795173947035, -2.207865586973518],
  [10.81793056857153, 6.780270611428266, 19.5348594464241],
  [34.19095006749676, 15.49671153725963, 54.7476087596413, 14.16005392148534],
  [34.62605830930532, 15.30084976114473, 56.99955578662667, 18.40807009793095, -5.714285714285717],
];
export const ALPHA = [0, 0.75, 0.21, 0.63, 1, 1];
export const D = [0.25, -0.5, -0.023504, -0.0362, 0, 0];
/** Weights of the new value, y + Σ m_i u_i. */
export const M = [...A[5], 1];
/** Dense output: y(θ) = (1−θ) y₀ + θ (y₁ + (1−θ)(Σ H1_i u_i + θ Σ H2_i u_i)). */
export const H1 = [25.09876703708589, 11.62013104361867, 28.49148307714626, -5.664021568594133, 0, 0];
export const H2 = [1.638054557396973, -0.7373619806678748, 8.47791821923899, 15.9925314877952, -1.882352941176471, 0];

/** The weights b_i of the method's untransformed form, y₁ = y₀ + Σ b_i k_i, from u = Γ k and Γ⁻¹ = I/γ − C. */
export const B = classicalWeights();

function classicalWeights(): number[] {
  // Γ is lower triangular, so bᵀ = mᵀ Γ solves bᵀ (I/γ − C) = mᵀ from the last stage backwards.
  const b = new Array<number>(STAGES).fill(0);
  for (let j = STAGES - 1; j >= 0; j--) {
    let rest = M[j];
    for (let i = j + 1; i < STAGES; i++) rest += b[i] * C[i][j];
    b[j] = rest * GAMMA;
  }
  return b;
}

/** Σ b_i d_i: what the explicit slope by time adds to a quadrature, times h². */
export const B_TIME = B.reduce((sum, b, i) => sum + b * D[i], 0);
