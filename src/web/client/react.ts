import { createElement, startTransition } from "react";
import { createRoot } from "react-dom/client";

/** What the page begins with of React, as one file: asked for apart, each would cost a request of its own. */
export const REACT = { createElement, startTransition, createRoot };
