/** Force on each of two even legs under one force, by the angle between them, radians: F ÷ (2 cos(α/2)) [source: derived]. */
export const twoLegKn = (kn: number, betweenRad: number): number => kn / (2 * Math.cos(betweenRad / 2));
