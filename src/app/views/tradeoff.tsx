const TradeoffView = () => <main />;
export default TradeoffView;
