/** The part of the Khronos validator that the model's test calls; the package ships no types. */
declare module 'gltf-validator' {
  const validator: {
    validateBytes(
      bytes: Uint8Array,
    ): Promise<{ issues: { numErrors: number; numWarnings: number } }>;
  };
  export default validator;
}
