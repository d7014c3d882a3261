/** Listens at the WebGL interface, so that counts do not rest on what a library says of itself. */

const fresh = () => ({ draws: 0, compiled: 0, linked: 0, geometryBytes: 0, textureBytes: 0 });
let counted = fresh();

/** What was asked for since the last time. */
export function taken(): ReturnType<typeof fresh> {
  const now = counted;
  counted = fresh();
  return now;
}

/** Starts to listen; once, before any context is made. */
export function listen(): void {
  const gl = WebGL2RenderingContext.prototype;
  const { drawElements, drawArrays, compileShader, linkProgram } = gl;
  gl.drawElements = function (...given) {
    counted.draws++;
    drawElements.apply(this, given);
  };
  gl.drawArrays = function (...given) {
    counted.draws++;
    drawArrays.apply(this, given);
  };
  gl.compileShader = function (...given) {
    counted.compiled++;
    compileShader.apply(this, given);
  };
  gl.linkProgram = function (...given) {
    counted.linked++;
    linkProgram.apply(this, given);
  };
  for (const name of ['bufferData', 'bufferSubData'] as const) {
    wrap(gl, name, (bytes) => {
      counted.geometryBytes += bytes;
    });
  }
  for (const name of ['texImage2D', 'texSubImage2D', 'texStorage2D'] as const) {
    wrap(gl, name, (bytes) => {
      counted.textureBytes += bytes;
    });
  }
}

/** Tells the bytes of whatever typed array a method is given. */
function wrap(gl: object, name: string, tell: (bytes: number) => void): void {
  const own: unknown = Reflect.get(gl, name);
  if (typeof own !== 'function') throw new Error(`WebGL has no ${name}`);
  Reflect.set(gl, name, function (this: unknown, ...given: unknown[]) {
    for (const one of given) if (ArrayBuffer.isView(one)) tell(one.byteLength);
    return Reflect.apply(own, this, given);
  });
}
