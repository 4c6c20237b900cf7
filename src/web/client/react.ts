/** What the page begins with of React, as one file: asked for apart, each would cost a request of its own. */
export { createElement, startTransition } from "react";
export { createRoot } from "react-dom/client";
