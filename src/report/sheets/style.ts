/** Black on white; Letter, with margins that A4 keeps too: 186 mm of text. */
export const style = `
@page{size:letter;margin:8mm 14mm}
*{box-sizing:border-box}
html{background:#fff;color:#000;font:10.5pt/1.3 "Barlow Semi Condensed","Roboto Condensed","Arial Narrow","Liberation Sans Narrow",Arial,sans-serif;font-variant-numeric:tabular-nums lining-nums}
body{margin:0}
.sheet{width:186mm;margin:0 auto;padding:10mm 0;break-after:page}
.sheet:last-child{break-after:auto}
@media print{.sheet{padding:0}}
header{display:flex;justify-content:space-between;align-items:flex-end;gap:8mm;border-bottom:.5mm solid #000;padding-bottom:1.5mm}
h1{font-size:17pt;line-height:1.1;margin:0;font-weight:600}
h1 span{font-size:11.5pt;font-weight:400;margin-left:3mm}
header p{margin:0;text-align:right;white-space:nowrap}
.caution{border:.5mm solid #000;padding:1.2mm 2.5mm;margin:2mm 0 0;font-size:9.6pt;line-height:1.2}
.caution b{font-weight:700}
.boxed{font-size:9.2pt;line-height:1.22;border:.4mm solid #000;padding:1.5mm 2.5mm}
h2{font-size:11.5pt;line-height:1.15;margin:2.4mm 0 .8mm;font-weight:700;break-after:avoid}
h2 small{font-size:9.5pt;font-weight:400;margin-left:2mm}
.pair{display:flex;gap:6mm;align-items:flex-start}
.pair>div{flex:1 1 0;min-width:0}
.pair>div.drawn{flex:0 0 auto}
p{margin:1.2mm 0}
.note{font-size:9.2pt;line-height:1.2}
table{border-collapse:collapse;width:100%;font-size:9.2pt;line-height:1.22;margin:0 0 1.5mm}
th{font-weight:400;font-size:8.8pt;text-align:right;vertical-align:bottom;border-bottom:.3mm solid #000;padding:.4mm 0 .4mm 2mm}
td{text-align:right;vertical-align:top;border-bottom:.13mm solid #999;padding:.3mm 0 .3mm 2mm}
tr{break-inside:avoid}
th:first-child,td:first-child{padding-left:0;text-align:left}
.w{text-align:left}
td:first-child{max-width:40mm}td small{font-size:7.8pt;white-space:nowrap}
.n{white-space:nowrap}
tr.heavy td,tr.sum td{font-weight:700}
tr.sum td{border-top:.3mm solid #000;border-bottom:0}
.ticks{list-style:none;margin:0;padding:0;font-size:9.5pt;line-height:1.2}
.ticks li{display:flex;gap:3mm;align-items:flex-end;break-inside:avoid;padding:.45mm 0}
.ticks i{flex:0 0 3.4mm;height:3.4mm;border:.25mm solid #000;align-self:flex-start;margin-top:.7mm}
.ticks span{flex:1}
.ticks u{flex:0 0 28mm;border-bottom:.18mm solid #000;height:4.6mm;text-decoration:none;font-size:7pt;color:#333;line-height:5mm}
.ticks u+u{flex-basis:16mm}
footer{border-top:.3mm solid #000;margin-top:2.5mm;padding-top:1mm;font-size:8.2pt;line-height:1.25;break-inside:avoid}
footer p{margin:0}
svg{display:block;max-width:100%}
svg text{font-size:3.1px;fill:#000;paint-order:stroke;stroke:#fff;stroke-width:1px;stroke-linejoin:round}
svg .b{font-weight:700}
.fine{stroke:#000;stroke-width:.13;fill:none}.thin{stroke:#000;stroke-width:.18;fill:none}.edge{stroke:#000;stroke-width:.22;fill:none}.cut{stroke:#000;stroke-width:.4;fill:none}.heavy{stroke:#000;stroke-width:.6;fill:none}
.limit{stroke-dasharray:2 1.3}.frost{stroke-dasharray:3 1 .6 1}.line{stroke-dasharray:5 1.5 1 1.5}.fall{stroke-dasharray:4 1.3 .7 1.3}
`;
