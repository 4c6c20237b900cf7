import { route } from "./route.ts";

/** OpenMetrics 1.0, as its specification names the type. */
export const METRICS_TYPE = "application/openmetrics-text; version=1.0.0; charset=utf-8";

/** How the server is doing. */
export const metricsRoutes = {
  metrics: route({
    least: "owner",
    method: "get",
    path: "/api/metrics",
    does: "Requests by route and status, how long they took, memory, event streams, plans that wait, the last backup; as OpenMetrics",
    answer: { kind: "file", status: 200, types: [METRICS_TYPE] },
  }),
};
