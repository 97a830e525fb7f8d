const root = import.meta.dirname;

/** @type {import('next').NextConfig} */
const config = {
  // Stated, since a lock file in some folder above would otherwise be taken for the project's root.
  turbopack: { root },
  outputFileTracingRoot: root,
  poweredByHeader: false,
  reactStrictMode: true,
  typedRoutes: false,
  // `npm run typecheck` checks the types, on both databases. A build must not need the tests' packages for it:
  // whoever installs for production does not have them.
  typescript: { ignoreBuildErrors: true },
  serverExternalPackages: ['libsql', '@libsql/client', '@prisma/adapter-libsql', '@prisma/adapter-pg', 'pg'],
  experimental: { turbopackFileSystemCacheForBuild: false },
  allowedDevOrigins: ['127.0.0.1', 'localhost'],
};

export default config;
