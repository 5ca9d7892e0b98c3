import { type RoadIndex, routeThrough } from '../road/index.ts';

/** A place on a road: a way of the network and the station on the route through that way, metres. */
export interface OnRoad {
  readonly way: number;
  readonly stationM: number;
}

/**
 * Distances along the roads from one place to others, metres, in the order given; null where no road joins them. Roads join where
 * they share a vertex. Shortest path (Dijkstra 1959) over the ways' vertices. [source: dijkstra1959]
 */
export function alongRoads(roads: RoadIndex, from: OnRoad, to: readonly OnRoad[]): (number | null)[] {
  const nodes = new Map<string, number>();
  const edges: { to: number; lengthM: number }[][] = [];
  const nodeAt = (lon: number, lat: number): number => {
    const key = `${lon.toFixed(7)},${lat.toFixed(7)}`;
    const known = nodes.get(key);
    if (known !== undefined) return known;
    nodes.set(key, edges.length);
    edges.push([]);
    return edges.length - 1;
  };
  const join = (a: number, b: number, lengthM: number): void => {
    edges[a]!.push({ to: b, lengthM });
    edges[b]!.push({ to: a, lengthM });
  };
  const seen = new Set<number>();
  const places = [from, ...to];
  const placeNodes = places.map(() => -1);
  roads.network.ways.forEach((_, way) => {
    if (seen.has(way)) return;
    const route = routeThrough(roads.network, roads.joins, way);
    for (const leg of route.legs) seen.add(leg.way);
    const vertices = Array.from(route.stationM, (stationM, k) => ({
      stationM,
      node: nodeAt(route.line[2 * k]!, route.line[2 * k + 1]!),
    }));
    places.forEach((place, i) => {
      if (!route.legs.some((leg) => leg.way === place.way)) return;
      placeNodes[i] = edges.length;
      edges.push([]);
      vertices.push({ stationM: stationFor(roads, route.lengthM, way, place), node: placeNodes[i]! });
    });
    vertices.sort((a, b) => a.stationM - b.stationM);
    for (let i = 1; i < vertices.length; i++) {
      join(vertices[i - 1]!.node, vertices[i]!.node, vertices[i]!.stationM - vertices[i - 1]!.stationM);
    }
  });
  const distance = shortest(edges, placeNodes[0]!);
  return placeNodes.slice(1).map((node) => {
    const lengthM = node < 0 ? Infinity : distance[node]!;
    return Number.isFinite(lengthM) ? lengthM : null;
  });
}

/** A place's station on the route as walked through `way`: a way drawn the other way round counts from the other end. */
function stationFor(roads: RoadIndex, lengthM: number, way: number, place: OnRoad): number {
  const asked = routeThrough(roads.network, roads.joins, place.way);
  const walked = routeThrough(roads.network, roads.joins, way);
  const own = (legs: typeof asked.legs): boolean => legs.find((leg) => leg.way === place.way)!.reversed;
  return own(asked.legs) === own(walked.legs) ? place.stationM : lengthM - place.stationM;
}

/** Shortest distance from one node to all, metres; a binary heap of [distance, node]. */
function shortest(edges: readonly { to: number; lengthM: number }[][], start: number): Float64Array {
  const best = new Float64Array(edges.length).fill(Infinity);
  if (start < 0) return best;
  best[start] = 0;
  const heap: [number, number][] = [[0, start]];
  while (heap.length > 0) {
    const [distance, node] = pop(heap);
    if (distance > best[node]!) continue;
    for (const { to, lengthM } of edges[node]!) {
      const next = distance + lengthM;
      if (next >= best[to]!) continue;
      best[to] = next;
      push(heap, [next, to]);
    }
  }
  return best;
}

function push(heap: [number, number][], entry: [number, number]): void {
  let i = heap.push(entry) - 1;
  while (i > 0) {
    const parent = (i - 1) >> 1;
    if (heap[parent]![0] <= heap[i]![0]) break;
    [heap[parent], heap[i]] = [heap[i]!, heap[parent]!];
    i = parent;
  }
}

function pop(heap: [number, number][]): [number, number] {
  const top = heap[0]!;
  const last = heap.pop()!;
  if (heap.length > 0) {
    heap[0] = last;
    let i = 0;
    for (;;) {
      const left = 2 * i + 1;
      const least = left + 1 < heap.length && heap[left + 1]![0] < heap[left]![0] ? left + 1 : left;
      if (least >= heap.length || heap[least]![0] >= heap[i]![0]) break;
      [heap[least], heap[i]] = [heap[i]!, heap[least]!];
      i = least;
    }
  }
  return top;
}
