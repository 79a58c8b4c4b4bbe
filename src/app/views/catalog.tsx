const CatalogView = () => <main />;
export default CatalogView;
