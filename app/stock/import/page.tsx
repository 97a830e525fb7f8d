import type { Metadata } from 'next';
import { Page } from '@/app/_ui/page';
import { StockImport } from './_components/stock-import';

export const metadata: Metadata = { title: 'Import a list' };

export default function StockImportPage() {
  return (
    <Page
      title="Import a list of stock"
      lead="A table saved as CSV, one lot a line, with headings in any order: material and quantity with its unit; lot code, part, price, received, opened, good until and note where you have them."
      up={{ href: '/stock', label: 'Stock' }}
    >
      <StockImport />
    </Page>
  );
}
