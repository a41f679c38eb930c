// The plan view on OpenLayers. A module of its own: it is loaded when the first plan is drawn.
export {};
