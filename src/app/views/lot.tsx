const LotView = () => <main />;
export default LotView;
