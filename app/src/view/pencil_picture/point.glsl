#version 300 es
precision highp float;

in vec3 at;
in vec3 normal;
in vec3 toReader;
flat in int material;

uniform vec3 coat;
uniform vec3 dip;
uniform vec3 lead;
uniform vec3 ink;
uniform vec4 imprint;   /* begin and end along the pencil, clockwise and counter-clockwise edge, mm */
uniform vec2 face;      /* outward normal of the face of the imprint */
uniform sampler2D letters;

out vec4 colour;

float noise(vec2 p) {
  vec2 cell = floor(p), part = fract(p);
  part = part * part * (3.0 - 2.0 * part);
  vec4 corner = vec4(cell, cell + 1.0);
  vec4 mixed = fract(sin(vec4(dot(corner.xy, vec2(127.1, 311.7)), dot(corner.zy, vec2(127.1, 311.7)),
    dot(corner.xw, vec2(127.1, 311.7)), dot(corner.zw, vec2(127.1, 311.7)))) * 43758.5453);
  return mix(mix(mixed.x, mixed.y, part.x), mix(mixed.z, mixed.w, part.x), part.y);
}

/* Growth rings about a pith outside the pencil, with fibres along it. */
vec3 wood() {
  float ring = length(at.xy - vec2(-23.0, 11.0)) + 0.6 * noise(vec2(at.z * 0.05, at.x * 0.3));
  float late = smoothstep(0.55, 0.95, fract(ring * 0.75)) * (1.0 - smoothstep(0.95, 1.0, fract(ring * 0.75)));
  float fibre = noise(vec2(ring * 14.0, at.z * 0.35)) * 0.6 + noise(vec2(at.y * 22.0 + at.x * 9.0, at.z * 0.8)) * 0.4;
  vec3 light = vec3(0.70, 0.45, 0.25), dark = vec3(0.46, 0.24, 0.11);
  return mix(light, dark, 0.55 * late) * (0.86 + 0.2 * fibre);
}

void main() {
  vec3 base;
  float gloss, sheen;
  if (material == 0) {
    base = lead * (0.85 + 0.3 * noise(vec2(atan(at.y, at.x) * 6.0, at.z * 9.0)));
    gloss = 14.0;
    sheen = 0.35;
  } else if (material == 1) {
    base = wood();
    gloss = 8.0;
    sheen = 0.03;
  } else {
    base = material == 3 ? dip : coat;
    gloss = 70.0;
    sheen = 0.55;
    vec2 round = vec2(-face.y, face.x);
    vec2 part = vec2((at.z - imprint.x) / (imprint.y - imprint.x), (dot(at.xy, round) - imprint.z) / (imprint.w - imprint.z));
    if (material == 2 && dot(at.xy, face) > 0.0 && all(greaterThan(part, vec2(0.0))) && all(lessThan(part, vec2(1.0)))) {
      base = mix(base, ink, texture(letters, part).a);
    }
  }
  vec3 n = normalize(normal), reader = normalize(toReader);
  vec3 key = normalize(vec3(-0.35, 0.8, 0.55)), fill = normalize(vec3(0.7, -0.15, 0.6));
  float sky = 0.5 + 0.5 * n.y;
  float light = 0.30 + 0.22 * sky + 0.62 * max(dot(n, key), 0.0) + 0.16 * max(dot(n, fill), 0.0);
  float shine = sheen * pow(max(dot(n, normalize(key + reader)), 0.0), gloss);
  float edge = sheen * 0.25 * pow(1.0 - max(dot(n, reader), 0.0), 4.0);
  vec3 linear = base * light + vec3(shine + edge * sky);
  colour = vec4(pow(min(linear, vec3(1.0)), vec3(1.0 / 2.2)), 1.0);
}
