import { InferenceSession, Tensor } from "onnxruntime-node";

/** The pictures that networks of the ImageNet family are mostly trained on have 224 pixels a side. */
export const ONNX_SIDE = 224;

/**
 * A network from elsewhere as a baseline: an ONNX file with one input of [n, 3, 224, 224] and, as its first output,
 * n rows of any length. It gets the grey picture three times, of mean 0 and deviation 1, which is what the usual
 * normalising by ImageNet's means and deviations leaves on average. The output before the classes tells more than the
 * classes, where a file offers it.
 * @returns a function from 224 x 224 standardised grey values to the output's numbers at unit length
 * @throws Error when the file is no such network
 */
export async function openOnnxBaseline(
  path: string,
): Promise<(picture: Float32Array) => Promise<Float32Array>> {
  const session = await InferenceSession.create(path, { executionProviders: ["cpu"] }).catch(
    (cause: unknown) => {
      throw new Error(`--baseline-onnx: must be an ONNX file. Received ${path}.`, { cause });
    },
  );
  const [input = ""] = session.inputNames;
  const [output = ""] = session.outputNames;
  return async (picture) => {
    const values = new Float32Array(3 * picture.length);
    for (const channel of [0, 1, 2]) values.set(picture, channel * picture.length);
    const answer = await session
      .run({ [input]: new Tensor("float32", values, [1, 3, ONNX_SIDE, ONNX_SIDE]) })
      .catch((cause: unknown) => {
        throw new Error(
          `--baseline-onnx: must take pictures of 1 x 3 x ${ONNX_SIDE} x ${ONNX_SIDE}. Received ${path}.`,
          {
            cause,
          },
        );
      });
    const data = answer[output]?.data;
    if (!(data instanceof Float32Array))
      throw new Error(`--baseline-onnx: must answer 32-bit numbers. Received ${path}.`);
    const length = Math.sqrt(data.reduce((sum, value) => sum + value * value, 1e-24));
    return data.map((value) => value / length);
  };
}
