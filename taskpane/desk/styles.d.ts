declare module "*.css";
declare module "exceljs/dist/exceljs.bare.min.js" {
  const excel: unknown;
  export default excel;
}
