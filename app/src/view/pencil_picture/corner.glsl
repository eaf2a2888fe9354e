#version 300 es
layout(location = 0) in vec3 place;
layout(location = 1) in vec3 outwards;
layout(location = 2) in float kind;

uniform mat3 turn;
uniform float along;   /* what is looked at, mm from the tip */
uniform vec2 sight;    /* half the width and half the height in sight, mm */
uniform float depth;   /* how far the pencil reaches from there, mm */

out vec3 at;
out vec3 normal;
out vec3 toReader;
flat out int material;

void main() {
  vec3 seen = turn * (place - vec3(0.0, 0.0, along));
  at = place;
  normal = turn * outwards;
  material = int(kind + 0.5);
  /* What is nearer is a little larger. */
  float near = 1.0 - seen.z / (6.0 * depth);
  toReader = vec3(-seen.xy / (6.0 * depth), near);
  gl_Position = vec4(seen.xy / sight, -seen.z / (2.0 * depth) * near, near);
}
