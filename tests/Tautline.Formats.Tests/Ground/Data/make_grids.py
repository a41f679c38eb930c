# Made the .tif files beside this with GDAL 3.6.2 (Python): python3 make_grids.py FOLDER. Heights are invented.
# Each file is one way of writing the same 11 x 9 grid, so that the reader is checked against a writer that is not ours.
from osgeo import gdal, osr
import numpy as np, os, sys
gdal.UseExceptions()
R,C=11,9
# invented heights, exact in every kind used: quarter steps for floats, whole for integers
r,c=np.mgrid[0:R,0:C]
h=200+r*2.25+c*0.5+((r*c)%7)*0.25
h[3,4]=-9999; h[0,0]=-9999
out=sys.argv[1]
def write(name,dtype,opts,arr=None,epsg=32616,nodata=-9999,gt=(500000.0,2.0,0,4400022.0,0,-2.0),bands=1,meta=None,srs=True,unit=None):
    a=h if arr is None else arr
    mem=gdal.GetDriverByName('MEM').Create('',a.shape[1],a.shape[0],bands,dtype)
    if gt: mem.SetGeoTransform(gt)
    if srs:
        s=osr.SpatialReference(); s.ImportFromEPSG(epsg) if isinstance(epsg,int) else s.SetFromUserInput(epsg); mem.SetProjection(s.ExportToWkt())
    for b in range(bands):
        mem.GetRasterBand(b+1).WriteArray(a+b)
        if nodata is not None: mem.GetRasterBand(b+1).SetNoDataValue(nodata)
    if unit: mem.GetRasterBand(1).SetUnitType(unit)
    if meta:
        for k,v in meta.items(): mem.SetMetadataItem(k,v)
    gdal.GetDriverByName('GTiff').CreateCopy(os.path.join(out,name+'.tif'),mem,options=opts)
F32,F64=gdal.GDT_Float32,gdal.GDT_Float64
T=['TILED=YES','BLOCKXSIZE=16','BLOCKYSIZE=16']
write('f32-strips',F32,['BLOCKYSIZE=3'])
write('f64-strips',F64,['BLOCKYSIZE=4'])
write('f32-lzw-p3-tiles',F32,T+['COMPRESS=LZW','PREDICTOR=3'])
write('f64-deflate-p3',F64,['COMPRESS=DEFLATE','PREDICTOR=3','BLOCKYSIZE=4'])
write('f32-deflate-tiles-big',F32,T+['COMPRESS=DEFLATE','BIGTIFF=YES'])
write('f32-bigendian',F32,['ENDIANNESS=BIG','COMPRESS=LZW'])  # with predictor 3 this GDAL writes what it cannot read back
write('f32-packbits',F32,['COMPRESS=PACKBITS'])
i=np.where(h==-9999,-9999,np.round(h)).astype(int)
write('i16-lzw-p2',gdal.GDT_Int16,['COMPRESS=LZW','PREDICTOR=2','BLOCKYSIZE=5'],i)
write('i32-deflate-p2-be',gdal.GDT_Int32,['COMPRESS=DEFLATE','PREDICTOR=2','ENDIANNESS=BIG'],i)
u=np.where(i==-9999,0,i)
write('u16-p2-tiles',gdal.GDT_UInt16,T+['COMPRESS=DEFLATE','PREDICTOR=2'],u,nodata=0)
write('u8',gdal.GDT_Byte,[],u,nodata=0)
write('f32-nan',F32,[],np.where(h==-9999,np.nan,h),nodata=float('nan'))
write('f32-two-bands',F32,['INTERLEAVE=PIXEL','COMPRESS=DEFLATE','PREDICTOR=3'],bands=2)
write('f32-two-bands-apart',F32,['INTERLEAVE=BAND','COMPRESS=LZW','PREDICTOR=3'],bands=2)
write('point',F32,[],meta={'AREA_OR_POINT':'Point'})
write('turned',F32,[],gt=(500000,1.9,0.3,4400022,0.3,-1.9))
write('degrees',F32,[],epsg=4326,gt=(-86.5,0.00001,0,39.1,0,-0.00001))
write('navd88-ftus',F32,[],epsg='EPSG:2965+6360',gt=(365000.0,5.0,0,1386000.0,0,-5.0))
write('ellipsoid',F32,[],epsg='EPSG:4979',gt=(-86.5,0.00001,0,39.1,0,-0.00001))
write('no-srs',F32,[],srs=False)
write('no-place',F32,[],srs=False,gt=None)
write('sparse',F32,T+['SPARSE_OK=TRUE','COMPRESS=LZW'],np.pad(h,((0,16),(0,16)),constant_values=-9999))
write('unit-metre',F32,[],unit='metre')
# colour picture
m=gdal.GetDriverByName('MEM').Create('',4,4,3,gdal.GDT_Byte); m.SetGeoTransform((0,1,0,4,0,-1)); gdal.GetDriverByName('GTiff').CreateCopy(os.path.join(out,'picture.tif'),m,options=['PHOTOMETRIC=RGB'])
# scale and offset
m=gdal.GetDriverByName('MEM').Create('',C,R,1,gdal.GDT_Int16); m.SetGeoTransform((500000.0,2.0,0,4400022.0,0,-2.0)); s=osr.SpatialReference(); s.ImportFromEPSG(32616); m.SetProjection(s.ExportToWkt())
b=m.GetRasterBand(1); b.WriteArray(np.where(h==-9999,-9999,((h-200)*4)).astype(int)); b.SetScale(0.25); b.SetOffset(200); b.SetNoDataValue(-9999); gdal.GetDriverByName('GTiff').CreateCopy(os.path.join(out,'scaled.tif'),m)
# matrix instead of scale and tiepoint: south-up
write('south-up',F32,[],gt=(500000,2.0,0,4400000,0,2.0))
v=h[h!=-9999]; print(v.sum(),v.min(),v.max(),len(v)); print(i[i!=-9999].sum(), h[10,8],h[5,2],h[1,1],h[3,5])
