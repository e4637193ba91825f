import { href, parseRoute, type Route } from "./route";

/** Where one is. */
class Here {
  route = $state.raw<Route>(parseRoute(location.hash));

  constructor() {
    addEventListener("hashchange", () => (this.route = parseRoute(location.hash)));
  }

  go(route: Route): void {
    location.hash = href(route);
  }
}

export const here = new Here();
