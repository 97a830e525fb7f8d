// Stands in for 'server-only' in tests, which run outside a bundler.
export {};
