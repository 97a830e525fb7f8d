const root = import.meta.dirname;

/** @type {import('next').NextConfig} */
const config = {
  // Stated, since a lock file in some folder above would otherwise be taken for the project's root.
  turbopack: { root },
  outputFileTracingRoot: root,
  output: 'standalone',
  poweredByHeader: false,
  reactStrictMode: true,
  typedRoutes: false,
  serverExternalPackages: ['libsql', '@libsql/client', '@prisma/adapter-libsql', '@prisma/adapter-pg', 'pg'],
  experimental: { turbopackFileSystemCacheForBuild: false },
  devIndicators: false,
  allowedDevOrigins: ['127.0.0.1', 'localhost'],
};

export default config;
